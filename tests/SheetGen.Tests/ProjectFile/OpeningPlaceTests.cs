using SheetGen.Tests.Inputs;
using Xunit;

namespace SheetGen.Tests.ProjectFile;

/// <summary>An opening, or a stretch closed to nails, that no part of the face lies in is told: it once changed nothing without a word.</summary>
public sealed class OpeningPlaceTests
{
    /// <summary>The face reaches from 100 up to 112 at 10+00 and 116 at 10+40: 114 at 10+20.</summary>
    [Theory]
    [InlineData("[10+00, 10+20]", 114, 120, "begins at 114, above the face, which ends at 114 from 10+00.00 to 10+20.00")]
    [InlineData("[10+00, 10+20]", 113.99, 120, null)]
    [InlineData("[10+20, 10+40]", 116, 120, "begins at 116, above the face, which ends at 116 from 10+20.00 to 10+40.00")]
    [InlineData("[10+20, 10+40]", 114, 120, null)]
    [InlineData("[10+10, 10+30]", 90, 100, "ends at 100, below the face, which begins at 100 from 10+10.00 to 10+30.00")]
    [InlineData("[10+10, 10+30]", 90, 100.01, null)]
    public void Openings_and_closed_stretches_beyond_the_face_are_told(string stations, double bottom, double top, string? said)
    {
        const string Line = "start: {station: 10+00, northing: 0, easting: 0, azimuth: 90}\n    elements: [{line: 40}]";
        using var folder = new InputFolder();
        foreach ((string key, string name, string what) in new[] { ("openings", "name: O, ", "the opening \"O\" "), ("no_nails", "", "the closed stretch ") })
        {
            string yaml = InputFolder.Yaml(Line, "[[10+00, 112], [10+40, 116]]", "[10+00, 10+40]", bottom: "100")
                .Replace("    sections:", FormattableString.Invariant($"    {key}: [{{{name}stations: {stations}, bottom: {bottom}, top: {top}}}]\n    sections:"), StringComparison.Ordinal);
            string[] told = [.. folder.Problems(yaml).Where(p => p.Contains("it changes nothing", StringComparison.Ordinal))];
            Assert.Equal(said is null ? 0 : 1, told.Length);
            Assert.All(told, t => Assert.Contains($": warning R72: {what}{said}", t, StringComparison.Ordinal));
        }
    }
}
