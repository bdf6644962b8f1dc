namespace SheetGen.Cli;

/// <summary>The program's version, as printed in outputs: without the commit, so that the same source gives the same bytes.</summary>
public static class ProgramVersion
{
    public static string Text { get; } = typeof(ProgramVersion).Assembly.GetName().Version!.ToString(3);
}
