using SheetGen.Exchange;
using SheetGen.Exchange.LandXml;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.ProjectFile;
using SheetGen.Tests.Outside;
using Xunit;

namespace SheetGen.Tests.Exchange;

/// <summary>The LandXML that is written, read again by the program's own reader of road files, which knows nothing of the writer.</summary>
public class ReadBackTests
{
    public static TheoryData<string> Walls => [.. ExchangeWalls.Names];

    [Theory]
    [MemberData(nameof(Walls))]
    public void Lines_and_tops_come_back(string wall)
    {
        ExchangeInput input = ExchangeWalls.Of(wall);
        using var folder = new TemporaryFolder();
        File.WriteAllBytes(folder.File(LandXmlFile.FileName), LandXmlFile.Make(input));
        string yaml = ExchangeWalls.Yaml(wall);
        int from = yaml.IndexOf("layout_lines:", StringComparison.Ordinal), to = yaml.IndexOf("\nwalls:", StringComparison.Ordinal);
        string lines = string.Concat(input.Project.LayoutLines.Select(l => $"\n  - {{name: {l.Name}, from_landxml: {{file: {LandXmlFile.FileName}, alignment: {l.Name}}}}}"));
        File.WriteAllText(folder.File("wall.yaml"), yaml[..from] + "layout_lines:" + lines + yaml[to..]);
        ReadResult read = ProjectReader.Read(folder.File("wall.yaml"));
        Assert.True(read.Project is not null, string.Join('\n', read.Problems.Where(p => p.Severity == Severity.Error).Select(p => p.Message)));
        foreach ((LayoutLine written, LayoutLine again) in input.Project.LayoutLines.Zip(read.Project.LayoutLines))
        {
            Assert.Equal(written.StartStation, again.StartStation);
            Assert.Equal(written.Length, again.Length, 1e-6);
            Assert.Equal(written.Stationing.Equations, again.Stationing.Equations);
            for (int i = 0; i <= 40; i++)
            {
                double along = written.Length * i / 40;
                Assert.True((written.PointAt(along) + input.Project.Origin - again.PointAt(along) - read.Project.Origin).Length < 1e-5, $"{written.Name} at {along}");
            }
        }
    }
}
