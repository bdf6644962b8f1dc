using System.Diagnostics;
using Spectre.Console;

namespace SheetGen.Cli;

/// <summary>
/// Says on the error stream which stage is running: a live line on a terminal; where the stream is piped a line a stage, once the run takes
/// longer than a person waits without a sign, so that what another program reads of a short run holds problems only.
/// </summary>
/// <param name="json">True where the error stream may hold JSON only: then nothing is said on a pipe.</param>
public sealed class StageDisplay(Screen screen, bool json = false) : IProgress<string>
{
    private static readonly TimeSpan Silence = TimeSpan.FromSeconds(3);

    private readonly Stopwatch _clock = Stopwatch.StartNew();
    private StatusContext? _context;
    private string _stage = "";

    /// <summary>Runs the work with the display on.</summary>
    public T While<T>(Func<T> work)
    {
        if (!screen.Live)
            return work();
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
        else if (!json && !screen.Live && _clock.Elapsed > Silence)
            screen.Error.WriteLine("sheetgen: " + _stage + detail);
    }
}
