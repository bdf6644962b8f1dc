namespace SheetGen.Cli;

/// <summary>Where a run prints, and how.</summary>
/// <param name="Out">What the user asked for.</param>
/// <param name="Error">Problems and progress.</param>
/// <param name="Live">True where the error stream is a terminal that can show a moving line.</param>
public sealed record Screen(TextWriter Out, TextWriter Error, bool Live)
{
    /// <summary>The process's own streams. A dumb terminal gets plain text.</summary>
    public static Screen OfProcess() => new(
        Console.Out, Console.Error, !Console.IsErrorRedirected && Environment.GetEnvironmentVariable("TERM") is not "dumb");

    /// <summary>A line of the program's own on the error stream; control characters of a path would move the cursor.</summary>
    public void Tell(string message) =>
        Error.WriteLine("sheetgen: " + new string([.. message.Select(c => char.IsControl(c) ? ' ' : c)]));
}
