using System.Text;
using SheetGen.Cli;
using Xunit;

namespace SheetGen.EndToEnd;

/// <summary>What a piped run says of its stages.</summary>
public sealed class StageTests
{
    [Fact]
    public void A_stage_that_began_in_silence_and_lasts_is_told_once_the_silence_ends()
    {
        var error = new Heard();
        var display = new StageDisplay(new Screen(TextWriter.Null, error, live: false), silence: TimeSpan.FromSeconds(2));

        bool isTold = display.While(() =>
        {
            display.Stage("placing nails");
            display.Report("all rows together");
            return SpinWait.SpinUntil(() => error.ToString().Length > 0, TimeSpan.FromMinutes(2));
        });

        Assert.True(isTold);
        Assert.Equal("sheetgen: placing nails: all rows together\n", error.ToString().ReplaceLineEndings("\n"));
    }

    [Theory]
    [InlineData(false, 3600)]
    [InlineData(true, 0)]
    public void A_short_run_and_one_that_answers_in_JSON_say_nothing(bool json, int silence)
    {
        var error = new Heard();
        var display = new StageDisplay(new Screen(TextWriter.Null, error, live: false), json, TimeSpan.FromSeconds(silence));

        display.While(() =>
        {
            display.Stage("placing nails");
            return 0;
        });

        Assert.Equal("", error.ToString());
    }

    [Fact]
    public void Each_stage_of_a_long_run_is_told_once()
    {
        var error = new Heard();
        var display = new StageDisplay(new Screen(TextWriter.Null, error, live: false), silence: TimeSpan.FromTicks(-1));

        display.While(() =>
        {
            display.Stage("placing nails");
            display.Stage("checking clear distances");
            return 0;
        });

        Assert.Equal("sheetgen: placing nails\nsheetgen: checking clear distances\n", error.ToString().ReplaceLineEndings("\n"));
    }

    /// <summary>Text that another thread may look at while it is written.</summary>
    private sealed class Heard : TextWriter
    {
        private readonly StringBuilder _text = new();

        public override Encoding Encoding => Encoding.UTF8;

        public override void Write(char value)
        {
            lock (_text)
                _text.Append(value);
        }

        public override void Write(string? value)
        {
            lock (_text)
                _text.Append(value);
        }

        public override string ToString()
        {
            lock (_text)
                return _text.ToString();
        }
    }
}
