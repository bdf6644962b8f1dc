namespace SheetGen.Cli;

/// <summary>Where a run prints, and how.</summary>
public sealed class Screen
{
    private readonly CleanWriter _out;
    private readonly CleanWriter _error;

    /// <param name="output">What the user asked for.</param>
    /// <param name="error">Problems and progress.</param>
    /// <param name="live">True where the error stream is a terminal that can show a moving line.</param>
    public Screen(TextWriter output, TextWriter error, bool live)
    {
        _out = new CleanWriter(output);
        _error = new CleanWriter(error);
        Terminal = error;
        Live = live;
    }

    public TextWriter Out => _out;

    public TextWriter Error => _error;

    public bool Live { get; }

    /// <summary>The error stream as it is, for the moving line alone: nothing of the user's goes there.</summary>
    public TextWriter Terminal { get; }

    /// <summary>The process's own streams. A dumb terminal gets plain text.</summary>
    public static Screen OfProcess() => new(
        Console.Out, Console.Error, !Console.IsErrorRedirected && Environment.GetEnvironmentVariable("TERM") is not "dumb");

    /// <summary>A line of the program's own on the error stream.</summary>
    public void Tell(string message) => Error.WriteLine("sheetgen: " + CleanWriter.Clean(message).ReplaceLineEndings(" ").Replace('\t', ' '));

    /// <summary>Says at the end that the output was lost; what was done and the exit code stand all the same.</summary>
    public void Close()
    {
        _out.Flush();
        if (_out.Failure is { } why)
            Tell($"the standard output could not be written ({why}); the exit code says what was done");
        _error.Flush();
    }
}
