using System.Runtime.InteropServices;

namespace SheetGen.Cli;

/// <summary>What a run tells the shell.</summary>
public static class ExitCode
{
    /// <summary>Done, and no finding of severity error.</summary>
    public const int Clean = 0;

    /// <summary>Done, and at least one finding needs the engineer.</summary>
    public const int Findings = 1;

    /// <summary>The input, the command line or the output folder is wrong; nothing was written.</summary>
    public const int WrongInput = 2;

    /// <summary>The program is at fault; nothing was written.</summary>
    public const int Fault = 3;

    /// <summary>Stopped from outside by a signal; nothing was written. As shells have it: 128 and the signal's number.</summary>
    public static int Of(PosixSignal signal) => signal switch
    {
        PosixSignal.SIGHUP => 129,
        PosixSignal.SIGTERM => 143,
        _ => 130,
    };
}
