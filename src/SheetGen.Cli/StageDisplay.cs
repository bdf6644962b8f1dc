using System.Diagnostics;
using Spectre.Console;

namespace SheetGen.Cli;

/// <summary>
/// Says on the error stream which stage is running: a live line on a terminal; where the stream is piped a line a stage, once the run takes
/// longer than a person waits without a sign, so that what another program reads of a short run holds problems only.
/// </summary>
/// <param name="json">True where the error stream may hold JSON only: then nothing is said on a pipe.</param>
/// <param name="silence">How long a piped run says nothing; 3 seconds where not given.</param>
public sealed class StageDisplay(Screen screen, bool json = false, TimeSpan? silence = null) : IProgress<string>
{
    private readonly TimeSpan _silence = silence ?? TimeSpan.FromSeconds(3);
    private readonly Stopwatch _clock = Stopwatch.StartNew();
    private readonly Lock _lock = new();
    private StatusContext? _context;
    private string _stage = "", _unsaid = "";

    /// <summary>Runs the work with the display on.</summary>
    public T While<T>(Func<T> work)
    {
        if (!screen.Live)
            return Piped(work);
        IAnsiConsole console = AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(screen.Terminal) });
        return console.Status().Start("starting", context =>
        {
            _context = context;
            try
            {
                return work();
            }
            finally
            {
                _context = null;
            }
        });
    }

    /// <summary>A stage starts.</summary>
    public void Stage(string stage)
    {
        _stage = stage;
        Show("");
    }

    /// <summary>How far the stage is.</summary>
    public void Report(string value) => Show(": " + value);

    private void Show(string detail)
    {
        if (_context is { } context)
            context.Status(Markup.Escape(CleanWriter.Clean(_stage + detail)));
        else if (!json && !screen.Live)
        {
            lock (_lock)
                _unsaid = _stage + detail;
            SayWhenLong();
        }
    }

    /// <summary>A stage that began in silence and lasts is told when the silence ends.</summary>
    private T Piped<T>(Func<T> work)
    {
        if (json)
            return work();
        TimeSpan left = _silence - _clock.Elapsed;
        using var whenLong = new Timer(_ => SayWhenLong(), null, left > TimeSpan.Zero ? left + TimeSpan.FromMilliseconds(50) : TimeSpan.Zero, Timeout.InfiniteTimeSpan);
        try
        {
            return work();
        }
        finally
        {
            // What follows are results: a timer that fires now finds nothing to say.
            lock (_lock)
                _unsaid = "";
        }
    }

    private void SayWhenLong()
    {
        lock (_lock)
        {
            if (_unsaid.Length == 0 || _clock.Elapsed <= _silence)
                return;
            screen.Error.WriteLine("sheetgen: " + _unsaid);
            _unsaid = "";
        }
    }
}
