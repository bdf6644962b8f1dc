using System.Runtime.InteropServices;

namespace SheetGen.Cli;

/// <summary>
/// Ends the run on Ctrl-C or a request to terminate, with a message and the code that shells expect. Nothing is on disk before the last step;
/// while that step runs it is asked to stop and given the time to leave the folder whole. Once the results are in place the run, then all but
/// over, ends by itself.
/// </summary>
public sealed class Interruption : IDisposable
{
    private readonly Lock _writing = new();
    private readonly List<PosixSignalRegistration> _registrations = [];
    private readonly Screen _screen;
    private volatile bool _requested;
    private volatile bool _written;

    public Interruption(Screen screen)
    {
        _screen = screen;
        foreach (PosixSignal signal in new[] { PosixSignal.SIGINT, PosixSignal.SIGTERM, PosixSignal.SIGHUP })
            _registrations.Add(PosixSignalRegistration.Create(signal, Stop));
    }

    public bool Requested => _requested;

    /// <summary>What stands after a stop, in words.</summary>
    public string WhatStands { get; set; } = "nothing written";

    /// <summary>Runs the step that touches the disk; a signal waits until it has come to a clean end.</summary>
    /// <param name="step">Gives true where it has written.</param>
    public bool WhileWriting(Func<bool> step)
    {
        lock (_writing)
            return _written = step();
    }

    /// <summary>Runs a step of many that touch the disk: a signal waits until it has come to a clean end, and then ends the run.</summary>
    public bool WhileWritingPart(Func<bool> step)
    {
        lock (_writing)
            return step();
    }

    /// <summary>Ends the run as a request to terminate does.</summary>
    public void End()
    {
        _requested = true;
        lock (_writing)
            Environment.Exit(ExitCode.Of(PosixSignal.SIGTERM));
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
        {
            if (_written)
                return;
            _screen.Tell("stopped by a signal; " + WhatStands);
            Environment.Exit(ExitCode.Of(context.Signal));
        }
    }
}
