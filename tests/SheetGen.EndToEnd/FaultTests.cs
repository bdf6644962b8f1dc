using SheetGen.Cli;
using Xunit;

namespace SheetGen.EndToEnd;

public sealed class FaultTests
{
    [Fact]
    public void A_fault_of_the_program_says_so_and_what_to_report()
    {
        var error = new StringWriter();
        int code = Entry.Run(["--version"], new Screen(new BrokenWriter(), error, live: false));
        Assert.Equal(3, code);
        Assert.Contains("the program is at fault, not your file", error.ToString(), StringComparison.Ordinal);
        Assert.Contains("no pen", error.ToString(), StringComparison.Ordinal);
        Assert.Contains(ProgramVersion.Text, error.ToString(), StringComparison.Ordinal);
    }

    private sealed class BrokenWriter : StringWriter
    {
        public override void Write(string? value) => throw new InvalidOperationException("no pen");
    }
}
