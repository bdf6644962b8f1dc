using System.Globalization;
using System.IO.Compression;
using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using SheetGen.Exchange;
using SheetGen.Exchange.Bcf;
using SheetGen.Exchange.Ifc;
using SheetGen.Model.Geometry;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Units;
using Xunit;

namespace SheetGen.Tests.Exchange;

/// <summary>
/// BCF 3.0: what its published schemas ask for, written anew as checks (order and number of elements, patterns of ids, required attributes).
/// The schemas of buildingSMART themselves were run over these files by hand with xmllint; they may not be carried here.
/// </summary>
public partial class BcfTests
{
    public static TheoryData<string> Walls => [.. ExchangeWalls.Names];

    private static Dictionary<string, XElement> Open(ExchangeInput input)
    {
        using var zip = new ZipArchive(new MemoryStream(BcfFile.Make(input)));
        return zip.Entries.ToDictionary(e => e.FullName, e =>
        {
            using Stream stream = e.Open();
            return XDocument.Load(stream).Root!;
        });
    }

    /// <summary>The finished layout with findings of every kind: with points, with nails only, with a stretch, with nothing, accepted, and two alike.</summary>
    private static ExchangeInput WithFindings(string wall)
    {
        ExchangeInput input = ExchangeWalls.Of(wall);
        Nail a = input.Layout.Nails[0], b = input.Layout.Nails[1];
        var clash = new Finding
        {
            Code = FindingCode.NailNail,
            Severity = Severity.Error,
            Wall = a.Wall,
            Nails = [a.Mark, b.Mark],
            Clear = 0.1,
            Required = 0.5,
            Points = [a.Hole.At(5), b.Hole.At(6)],
            Message = "too close & <near>\u0001",
        };
        Finding[] more =
        [
            clash,
            clash,
            new Finding { Code = FindingCode.NotedRedirect, Severity = Severity.Notice, Wall = a.Wall, Nails = [a.Mark], Message = "turned" },
            new Finding { Code = FindingCode.Cover, Severity = Severity.Accepted, Wall = a.Wall, Station = a.Station, ToStation = a.Station + 2, Message = "wide" },
            new Finding { Code = FindingCode.LeftOut, Severity = Severity.Warning, Wall = a.Wall, Nails = ["A-9-99"], Message = "left out" },
            new Finding { Code = FindingCode.Sheet, Severity = Severity.Warning, Message = "no room" },
            .. input.Project.Obstructions.Select(o => new Finding { Code = FindingCode.NailObstruction, Severity = Severity.Warning, Wall = a.Wall, Obstruction = o.Name, Message = o.Name }),
        ];
        return input with { Report = input.Report with { Findings = [.. input.Report.Findings, .. more] } };
    }

    [Theory]
    [MemberData(nameof(Walls))]
    public void Every_finding_is_a_topic_with_a_camera_and_the_ids_of_the_ifc_file(string wall)
    {
        ExchangeInput input = WithFindings(wall);
        Dictionary<string, XElement> files = Open(input);
        Assert.Equal("3.0", files["bcf.version"].Attribute("VersionId")!.Value);
        HashSet<string> ids = [.. GlobalId().Matches(Encoding.ASCII.GetString(IfcFile.Make(input))).Select(m => m.Groups[1].Value)];
        Finding[] findings = [.. input.Report.Findings];
        XElement[] markups = [.. files.Where(f => f.Key.EndsWith("/markup.bcf", StringComparison.Ordinal)).Select(f => f.Value)];
        Assert.Equal(findings.Length, markups.Length);
        Assert.Equal(3 + 2 * findings.Length, files.Count);
        string[] allowed = [.. files["extensions.xml"].Elements().SelectMany(e => e.Elements()).Select(e => e.Value)];
        for (int i = 0; i < findings.Length; i++)
        {
            XElement topic = markups[i].Element("Topic")!;
            string id = topic.Attribute("Guid")!.Value;
            Assert.Same(markups[i], files[id + "/markup.bcf"]);
            AssertTopic(findings[i], topic, allowed, i + 1);
            Assert.Contains(markups[i].Descendants("File").Single().Attribute("IfcProject")!.Value, ids);
            XElement view = files[id + "/viewpoint.bcfv"];
            Assert.Equal(view.Attribute("Guid")!.Value, topic.Descendants("ViewPoint").Single().Attribute("Guid")!.Value);
            Assert.Matches(Uuid(), view.Attribute("Guid")!.Value);
            AssertView(input, findings[i], view, ids);
        }
        Assert.Equal(findings.Length, markups.Select(m => m.Element("Topic")!.Attribute("Guid")!.Value).Distinct().Count());
    }

    private static void AssertTopic(Finding finding, XElement topic, string[] allowed, int number)
    {
        Assert.Matches(Uuid(), topic.Attribute("Guid")!.Value);
        string[] order = ["Title", "Priority", "Index", "Labels", "CreationDate", "CreationAuthor", "Description", "Viewpoints"];
        string[] names = [.. topic.Elements().Select(e => e.Name.LocalName)];
        Assert.Equal(order.Where(names.Contains), names);
        Assert.All(["Title", "CreationDate", "CreationAuthor"], n => Assert.Contains(n, names));
        Assert.Equal(finding.Code, topic.Attribute("TopicType")!.Value);
        Assert.Equal(finding.Severity == Severity.Accepted ? "Accepted" : "Open", topic.Attribute("TopicStatus")!.Value);
        Assert.Equal(ResultWords.Of(finding.Severity), topic.Element("Priority")!.Value);
        string[] used = [finding.Code, topic.Attribute("TopicStatus")!.Value, topic.Element("Priority")!.Value, topic.Element("CreationAuthor")!.Value, .. topic.Descendants("Label").Select(l => l.Value)];
        Assert.All(used, u => Assert.Contains(u, allowed));
        Assert.Contains(finding.Message.Replace("\u0001", "", StringComparison.Ordinal), topic.Element("Description")!.Value, StringComparison.Ordinal);
        Assert.Contains(FormattableString.Invariant($"F-{number:0000}"), topic.Element("Description")!.Value, StringComparison.Ordinal);
        Assert.NotEmpty(topic.Element("Title")!.Value);
        Assert.True(DateTime.TryParseExact(topic.Element("CreationDate")!.Value, "yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture, DateTimeStyles.None, out _));
    }

    private static void AssertView(ExchangeInput input, Finding finding, XElement view, HashSet<string> ids)
    {
        Assert.Equal(["Components", "PerspectiveCamera", "Lines"], view.Elements().Select(e => e.Name.LocalName).Append("Lines").Distinct());
        string[] components = [.. view.Descendants("Component").Select(c => c.Attribute("IfcGuid")!.Value)];
        Assert.All(components, c => Assert.Contains(c, ids));
        int selected = view.Element("Components")!.Element("Selection")!.Elements("Component").Count();
        HashSet<string> marks = [.. input.Layout.Nails.Select(n => n.Mark)];
        Assert.Equal(2 * finding.Nails.Count(marks.Contains) + (finding.Obstruction is not null && input.Project.Obstructions.Any(o => o.Name == finding.Obstruction) ? 1 : 0), selected);
        XElement camera = view.Element("PerspectiveCamera")!;
        Vector3D eye = Triple(camera.Element("CameraViewPoint")!), direction = Triple(camera.Element("CameraDirection")!), up = Triple(camera.Element("CameraUpVector")!);
        Assert.Equal(1, direction.Length, 5);
        Assert.Equal(1, up.Length, 5);
        Assert.Equal(0, up.Dot(direction), 5);
        Assert.InRange(double.Parse(camera.Element("FieldOfView")!.Value, CultureInfo.InvariantCulture), 1, 179);
        // What it is about lies within the picture: no more than half of the field of view off the middle.
        foreach (Vector3D point in finding.Points)
        {
            Vector3D to = World(input, point) - eye;
            double off = Math.Acos(Math.Clamp(to.Dot(direction) / to.Length, -1, 1)) * 180 / Math.PI;
            Assert.InRange(off, 0, 30);
        }
        if (finding.Points.Count == 2)
        {
            XElement line = view.Element("Lines")!.Element("Line")!;
            Assert.True((Triple(line.Element("StartPoint")!) - World(input, finding.Points[0])).Length < 1e-5);
            Assert.True((Triple(line.Element("EndPoint")!) - World(input, finding.Points[1])).Length < 1e-5);
        }
    }

    private static Vector3D Triple(XElement e)
    {
        double Part(string name) => double.Parse(e.Element(name)!.Value, CultureInfo.InvariantCulture);
        return new Vector3D(Part("Y"), Part("X"), Part("Z"));
    }

    private static Vector3D World(ExchangeInput input, Vector3D point)
    {
        Vector2D shift = input.Project.Info.Facts.ContainsKey("coordinate_zone") ? default : input.Project.Origin;
        return (point + shift.At(0)) * Lengths.MetresPer(input.Project.Unit);
    }

    [Fact]
    public void A_topic_keeps_its_id_when_findings_come_and_go()
    {
        ExchangeInput input = WithFindings("feet");
        string[] all = Ids(input), fewer = Ids(input with { Report = input.Report with { Findings = [.. input.Report.Findings.Skip(1)] } });
        Assert.Equal(all.Skip(1), fewer);

        static string[] Ids(ExchangeInput input) =>
            [.. Open(input).Where(f => f.Key.EndsWith("/markup.bcf", StringComparison.Ordinal)).Select(f => f.Value.Element("Topic")!.Attribute("Guid")!.Value)];
    }

    [GeneratedRegex(@"=IFC\w+\('([0-3][0-9A-Za-z_$]{21})'")]
    private static partial Regex GlobalId();

    [GeneratedRegex("^[a-f0-9]{8}-[a-f0-9]{4}-[a-f0-9]{4}-[a-f0-9]{4}-[a-f0-9]{12}$")]
    private static partial Regex Uuid();
}
