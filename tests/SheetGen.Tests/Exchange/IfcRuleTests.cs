using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using SheetGen.Exchange.Ifc;
using Xunit;

namespace SheetGen.Tests.Exchange;

/// <summary>
/// Rules (WHERE, UNIQUE) that the EXPRESS schema of IFC 4.3 has for the entities that are written, from memory: no checker of them was to be had in
/// the package registries, and ISO 16739-1 was not at hand. Each rule is named as the schema names it.
/// </summary>
public partial class IfcRuleTests
{
    public static TheoryData<string> Walls => [.. ExchangeWalls.Names];

    [GeneratedRegex(@"^#(?<id>\d+)=(?<type>[A-Z0-9]+)\((?<of>.*)\);$", RegexOptions.Multiline)]
    private static partial Regex Entity();

    private sealed record Thing(int Id, string Type, string[] Arguments)
    {
        public override string ToString() => $"#{Id} {Type}";

        public int? Reference(int i) => Arguments[i].StartsWith('#') ? int.Parse(Arguments[i][1..], CultureInfo.InvariantCulture) : null;

        public int[] References(int i) => [.. Regex.Matches(Arguments[i], "#([0-9]+)").Select(m => int.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture))];

        public double[] Reals(int i) => [.. Arguments[i].Trim('(', ')').Split(',').Select(v => double.Parse(v, CultureInfo.InvariantCulture))];
    }

    [Theory]
    [MemberData(nameof(Walls))]
    public void The_rules_of_the_schema_hold(string wall) => Assert.Equal([], Broken(Encoding.ASCII.GetString(IfcFile.Make(ExchangeWalls.Of(wall)))));

    /// <summary>A rule that cannot be broken proves nothing: each change breaks the one that is named.</summary>
    [Theory]
    [InlineData("'GROUTED HOLE',(#\\d+),(#\\d+),('[^']*'),.USERDEFINED.", "$,$1,$2,$3,.USERDEFINED.", "CorrectPredefinedType")]
    [InlineData("=IFCCIRCLEPROFILEDEF\\((.*),[0-9.]+\\);", "=IFCCIRCLEPROFILEDEF($1,0.);", "Radius")]
    [InlineData("=IFCPROJECT\\('([^']*)',([^,]*),'[^']*'", "=IFCPROJECT('$1',$2,$", "HasName")]
    [InlineData("=IFCELEMENTQUANTITY\\((.*),\\((#\\d+),", "=IFCELEMENTQUANTITY($1,($2,$2,", "UniqueQuantityNames")]
    [InlineData("=IFCRELAGGREGATES\\((.*),(#\\d+),\\((#\\d+)\\)\\);", "=IFCRELAGGREGATES($1,$2,($2));", "NoSelfReference")]
    [InlineData("=IFCSHAPEREPRESENTATION\\((#\\d+),('[^']*'),'[^']*'", "=IFCSHAPEREPRESENTATION($1,$2,$", "HasRepresentationType")]
    public void A_broken_rule_is_seen(string from, string to, string rule)
    {
        string file = Encoding.ASCII.GetString(IfcFile.Make(ExchangeWalls.Of("feet"))), broken = new Regex(from).Replace(file, to, 1);
        Assert.NotEqual(file, broken);
        Assert.Contains(Broken(broken), b => b.EndsWith(": " + rule, StringComparison.Ordinal));
    }

    private static List<string> Broken(string file)
    {
        var things = Entity().Matches(file.ReplaceLineEndings("\n")).Select(m => new Thing(int.Parse(m.Groups["id"].Value, CultureInfo.InvariantCulture), m.Groups["type"].Value, Split(m.Groups["of"].Value))).ToDictionary(t => t.Id);
        var broken = new List<string>();
        void Rule(Thing thing, bool holds, string name)
        {
            if (!holds)
                broken.Add($"{thing}: {name}");
        }
        IEnumerable<Thing> Of(params string[] types) => things.Values.Where(t => types.Contains(t.Type));
        string NameOf(int id) => things[id].Arguments[0];
        var ids = new HashSet<string>();
        foreach (Thing thing in things.Values)
        {
            Rule(thing, thing.Arguments.All(a => Regex.Matches(Unquoted(a), "#([0-9]+)").All(m => things.ContainsKey(int.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture)))), "every reference leads to an entity");
            if (Regex.IsMatch(thing.Arguments[0], "^'[0-9A-Za-z_$]{22}'$"))
                Rule(thing, ids.Add(thing.Arguments[0]), "IfcRoot UR1");
            if (thing.Arguments.Length > 4 && thing.Arguments.Contains(".USERDEFINED."))
                Rule(thing, thing.Arguments[4] != "$", "CorrectPredefinedType");
        }
        foreach (Thing t in Of("IFCPROJECT"))
        {
            Rule(t, t.Arguments[2] != "$", "HasName");
            Rule(t, t.References(7).All(r => things[r].Type == "IFCGEOMETRICREPRESENTATIONCONTEXT"), "CorrectContext");
            Rule(t, !Of("IFCRELAGGREGATES").Any(a => a.References(5).Contains(t.Id)) && Of("IFCPROJECT").Count() == 1, "NoDecomposition");
        }
        foreach (Thing t in Of("IFCPROPERTYSET"))
        {
            Rule(t, t.Arguments[2] != "$", "ExistsName");
            Rule(t, t.References(4).Select(NameOf).Distinct().Count() == t.References(4).Length, "UniquePropertyNames");
        }
        foreach (Thing t in Of("IFCELEMENTQUANTITY"))
            Rule(t, t.References(5).Select(NameOf).Distinct().Count() == t.References(5).Length, "UniqueQuantityNames");
        foreach (Thing t in things.Values.Where(t => t.Type.StartsWith("IFCQUANTITY", StringComparison.Ordinal) && t.Type != "IFCQUANTITYNUMBER"))
            Rule(t, t.Reals(3)[0] >= 0, "WR22");
        foreach (Thing t in Of("IFCRELAGGREGATES", "IFCRELNESTS", "IFCRELPOSITIONS"))
            Rule(t, !t.References(5).Contains(t.Reference(4)!.Value), "NoSelfReference");
        string[] spatial = ["IFCSITE", "IFCFACILITY", "IFCFACILITYPARTCOMMON", "IFCPROJECT"];
        foreach (Thing t in Of("IFCRELCONTAINEDINSPATIALSTRUCTURE", "IFCRELREFERENCEDINSPATIALSTRUCTURE"))
            Rule(t, t.References(4).All(r => !spatial.Contains(things[r].Type)) && spatial.Contains(things[t.Reference(5)!.Value].Type), "WR31");
        foreach (IGrouping<int, Thing> contained in Of("IFCRELCONTAINEDINSPATIALSTRUCTURE").SelectMany(t => t.References(4).Select(r => (r, t))).GroupBy(p => p.r, p => p.t))
            Rule(contained.First(), contained.Count() == 1, "contained once");
        foreach (Thing t in Of("IFCRELDEFINESBYPROPERTIES"))
            Rule(t, t.References(4).All(r => !things[r].Type.EndsWith("TYPE", StringComparison.Ordinal)), "NoRelatedTypeObject");
        foreach (Thing t in Of("IFCRELDEFINESBYTYPE"))
            Rule(t, t.References(4).All(r => things[r].Type + "TYPE" == things[t.Reference(5)!.Value].Type), "CorrectTypeAssigned");
        foreach (Thing t in Of("IFCSHAPEREPRESENTATION"))
        {
            Rule(t, things[t.Reference(0)!.Value].Type.StartsWith("IFCGEOMETRICREPRESENTATION", StringComparison.Ordinal), "CorrectContext");
            Rule(t, t.Arguments[2] != "$", "HasRepresentationType");
            Rule(t, t.Arguments[1] != "$", "HasRepresentationIdentifier");
        }
        foreach (Thing t in Of("IFCEXTRUDEDAREASOLID"))
            Rule(t, things[t.Reference(2)!.Value].Reals(0)[2] != 0 && t.Reals(3)[0] > 0, "ValidExtrusionDirection");
        foreach (Thing t in Of("IFCAXIS2PLACEMENT3D"))
        {
            Rule(t, t.Arguments[1] == "$" == (t.Arguments[2] == "$"), "AxisAndRefDirProvision");
            if (t.Reference(1) is { } axis && t.Reference(2) is { } direction)
                Rule(t, Cross(things[axis].Reals(0), things[direction].Reals(0)) > 1e-9, "AxisToRefDirPosition");
        }
        foreach (Thing t in Of("IFCDIRECTION"))
            Rule(t, t.Reals(0).Sum(v => v * v) > 0, "MagnitudeGreaterZero");
        foreach (Thing t in Of("IFCCIRCLEPROFILEDEF"))
            Rule(t, t.Reals(3)[0] > 0, "Radius");
        foreach (Thing t in Of("IFCSWEPTDISKSOLID"))
            Rule(t, t.Reals(1)[0] > 0 && things[t.Reference(0)!.Value].References(0).All(p => things[p].Reals(0).Length == 3), "DirectrixDim");
        foreach (Thing t in Of("IFCPOLYLINE"))
            Rule(t, t.References(0).Select(p => things[p].Reals(0).Length).Distinct().Count() == 1, "SameDim");
        foreach (Thing t in Of("IFCBUILDINGELEMENTPROXY"))
            Rule(t, t.Arguments[2] != "$", "HasObjectName");
        foreach (Thing t in Of("IFCUNITASSIGNMENT"))
            Rule(t, t.References(0).Select(u => things[u].Arguments[1]).Distinct().Count() == t.References(0).Length, "WR01");
        foreach (Thing t in Of("IFCSTYLEDITEM"))
            Rule(t, t.Reference(0) is { } item && things[item].Type != "IFCSTYLEDITEM", "ApplicableItem");
        foreach (Thing t in Of("IFCTRIANGULATEDFACESET"))
        {
            int points = Regex.Count(things[t.Reference(0)!.Value].Arguments[0], @"\([^()]+\)");
            Rule(t, Regex.Matches(t.Arguments[3], "[0-9]+").Select(m => int.Parse(m.Value, CultureInfo.InvariantCulture)).All(v => v >= 1 && v <= points), "CoordIndex");
        }
        return broken;
    }

    private static string Unquoted(string text) => Regex.Replace(text, "'(?:[^']|'')*'", "");

    private static double Cross(double[] a, double[] b) =>
        Math.Sqrt(Math.Pow(a[1] * b[2] - a[2] * b[1], 2) + Math.Pow(a[2] * b[0] - a[0] * b[2], 2) + Math.Pow(a[0] * b[1] - a[1] * b[0], 2));

    /// <summary>The arguments of an entity, parted by commas that stand in no bracket and no text.</summary>
    private static string[] Split(string text)
    {
        var parts = new List<string>();
        int depth = 0, start = 0;
        bool quoted = false;
        for (int i = 0; i < text.Length; i++)
        {
            if (text[i] == '\'')
                quoted = !quoted;
            else if (!quoted && text[i] is '(' or ')')
                depth += text[i] == '(' ? 1 : -1;
            else if (!quoted && depth == 0 && text[i] == ',')
            {
                parts.Add(text[start..i]);
                start = i + 1;
            }
        }
        parts.Add(text[start..]);
        return [.. parts];
    }
}
