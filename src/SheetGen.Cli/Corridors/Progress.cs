using System.Diagnostics;
using System.Globalization;
using Spectre.Console;

namespace SheetGen.Cli.Corridors;

/// <summary>
/// How far a run over many pieces is, with the time left by the rate so far: a bar on a terminal; where the error stream is piped, a line at
/// most every few seconds. Lines of the run itself wait until the bar is gone.
/// </summary>
internal sealed class Progress(string what, int total, Screen screen, bool isSilent)
{
    private static readonly TimeSpan Between = TimeSpan.FromSeconds(5);

    private readonly Lock _lock = new();
    private readonly Stopwatch _clock = Stopwatch.StartNew();
    private readonly List<(bool IsError, string Text)> _held = [];
    private TimeSpan _lastTold;
    private ProgressTask? _bar;
    private int _done;

    /// <summary>Runs the work with the display on.</summary>
    public void While(Action work)
    {
        if (!screen.Live || total < 2)
        {
            work();
            return;
        }
        IAnsiConsole console = AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(screen.Terminal) });
        console.Progress().AutoClear(true)
            .Columns(new TaskDescriptionColumn(), new ProgressBarColumn(), new PercentageColumn(), new RemainingTimeColumn())
            .Start(context =>
            {
                _bar = context.AddTask(what, maxValue: total);
                try
                {
                    work();
                }
                finally
                {
                    _bar = null;
                }
            });
        foreach ((bool isError, string text) in _held)
            (isError ? screen.Error : screen.Out).WriteLine(text);
        _held.Clear();
    }

    /// <summary>A piece is done.</summary>
    public void Done()
    {
        lock (_lock)
        {
            _done++;
            _bar?.Increment(1);
            if (screen.Live || isSilent || _done >= total || _clock.Elapsed - _lastTold < Between)
                return;
            _lastTold = _clock.Elapsed;
            screen.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"sheetgen: {_done} of {total} {what}, about {InWords(_clock.Elapsed / _done * (total - _done))} left"));
        }
    }

    /// <summary>Prints a line of the run, at once or when the bar is gone.</summary>
    public void Print(string line, bool isError = false)
    {
        lock (_lock)
        {
            if (_bar is not null)
                _held.Add((isError, line));
            else
                (isError ? screen.Error : screen.Out).WriteLine(line);
        }
    }

    /// <summary>"45 s", "3 min 20 s", "2 h 5 min".</summary>
    public static string InWords(TimeSpan time) => time.TotalSeconds < 60 ? FormattableString.Invariant($"{Math.Ceiling(time.TotalSeconds)} s")
        : time.TotalMinutes < 60 ? FormattableString.Invariant($"{time.Minutes} min {time.Seconds} s")
        : FormattableString.Invariant($"{(int)time.TotalHours} h {time.Minutes} min");
}
