using System.Runtime.InteropServices;

namespace SheetGen.Cli;

/// <summary>
/// Ends the run on Ctrl-C or a request to terminate. Nothing is on disk before the last step; while that step runs it is asked to stop
/// and given the time to leave the folder whole.
/// </summary>
public sealed class Interruption : IDisposable
{
    private readonly Lock _writing = new();
    private readonly List<PosixSignalRegistration> _registrations = [];
    private volatile bool _requested;

    public Interruption()
    {
        foreach (PosixSignal signal in new[] { PosixSignal.SIGINT, PosixSignal.SIGTERM, PosixSignal.SIGHUP })
            _registrations.Add(PosixSignalRegistration.Create(signal, Stop));
    }

    public bool Requested => _requested;

    /// <summary>Runs the step that touches the disk; a signal waits until it has come to a clean end.</summary>
    public T WhileWriting<T>(Func<T> step)
    {
        lock (_writing)
            return step();
    }

    public void Dispose()
    {
        foreach (PosixSignalRegistration registration in _registrations)
            registration.Dispose();
    }

    private void Stop(PosixSignalContext context)
    {
        context.Cancel = true;
        _requested = true;
        lock (_writing)
            Environment.Exit(ExitCode.Interrupted);
    }
}
