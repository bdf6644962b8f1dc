using Spectre.Console;

namespace SheetGen.Cli;

/// <summary>
/// Says on the error stream which stage is running: a live line on a terminal, nothing where the stream is piped,
/// so that what another program reads holds problems only.
/// </summary>
public sealed class StageDisplay(Screen screen) : IProgress<string>
{
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
    }
}
