namespace SheetGen.Cli;

/// <summary>The whole program as one call.</summary>
public static class Entry
{
    /// <summary>Runs a command line; a fault of our own ends in a plain message and <see cref="ExitCode.Fault"/>.</summary>
    public static int Run(IReadOnlyList<string> args, Screen screen)
    {
        try
        {
            using var interruption = new Interruption(screen);
            return CommandLine.Run(args, screen, interruption);
        }
        catch (Exception e)
        {
            screen.Tell("the program is at fault, not your file; no set of results is left half written.");
            screen.Tell($"please report the project file, the command and these lines (version {ProgramVersion.Text}):");
            screen.Error.WriteLine(e);
            return ExitCode.Fault;
        }
        finally
        {
            screen.Close();
        }
    }
}
