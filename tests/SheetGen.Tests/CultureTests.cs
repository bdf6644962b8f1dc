using System.Globalization;
using Xunit;

namespace SheetGen.Tests;

/// <summary>The run under a comma culture means something only where the culture is really in force.</summary>
public sealed class CultureTests
{
    [Fact]
    public void The_culture_that_a_run_asks_for_is_in_force()
    {
        string? asked = Environment.GetEnvironmentVariable("SHEETGEN_TEST_CULTURE");
        if (asked is not null)
            Assert.Equal(asked, CultureInfo.CurrentCulture.Name);
        Assert.Equal("1,5", 1.5.ToString(CultureInfo.GetCultureInfo("de-DE")));
    }
}
