namespace SheetGen.Cli;

/// <summary>The output folder cannot be written; the message is for the user.</summary>
public sealed class OutputException : Exception
{
    public OutputException(string message)
        : base(message)
    {
    }
}
