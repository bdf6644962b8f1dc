using SheetGen.Model.Units;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Inputs.LandXml;

/// <summary>A LandXML profile as the points of a profile of the project file.</summary>
internal static class ProfileNodes
{
    /// <summary>The points, with their vertical curves; null where one cannot be used, which is reported.</summary>
    /// <param name="raise">Added to every elevation, in project units.</param>
    /// <param name="wall">The wall, whose stretch matters for gaps.</param>
    /// <param name="along">Distance along the layout line, in project units, of a station of the file.</param>
    public static IReadOnlyList<Node>? Of(
        XmlPart profile, LandXmlFile file, FileUnit length, LengthUnit unit, double raise, WallPlace wall, Func<double, double> along, ProblemList problems)
    {
        double factor = length.In(unit);
        FileUnit own = FileUnit.Of(unit);
        var nodes = new List<Node>();
        bool good = true;
        double? reached = null; // Station where the list of points before ends.
        foreach (XmlPart part in profile.Parts)
        {
            Model.Problems.SourceSpot spot = file.File.At(part.Line, part.Column);
            Node Place(double station) => Nodes.Along(along(station), spot);
            Node Level(double z) => raise == 0 ? Nodes.Length(z, length, spot) : Nodes.Length(z * factor + raise, own, spot);
            if (part.Name is "PntList2D")
            {
                if (part.Numbers() is not { } list || list.Length % 2 != 0)
                    good = Bad(part, "the list of points is not pairs of station and elevation");
                else
                {
                    if (reached is { } end && list.Length > 0 && list[0] - end > 1e-6 && along(list[0]) > (wall.Start ?? double.NegativeInfinity) && along(end) < (wall.End ?? double.PositiveInfinity))
                        problems.Add(ProblemCodes.Inexact, spot, FormattableString.Invariant($"the profile has a gap from station {end} to {list[0]}: a straight line is taken over it"), "type the ground there, or take a surface that covers the wall", file.File.Spot);
                    reached = list.Length > 0 ? list[^2] : reached;
                    nodes.AddRange(Enumerable.Range(0, list.Length / 2).Select(i => Nodes.Map(spot, ("station", Place(list[2 * i])), ("elevation", Level(list[2 * i + 1])))));
                }
                continue;
            }
            if (part.Name is not ("PVI" or "ParaCurve" or "UnsymParaCurve" or "CircCurve"))
                continue;
            if (part.Numbers() is not { Length: >= 2 } point)
            {
                good = Bad(part, "the point of the profile is not a station and an elevation");
                continue;
            }
            var keys = new List<(string, Node)> { ("station", Place(point[0])), ("elevation", Level(point[1])) };
            void Add(string key, string attribute)
            {
                if (part.Number(attribute) is not { } value)
                    good = Bad(part, $"the vertical curve lacks its {attribute}, or it is not a number");
                else if (value < 0 && attribute != "radius")
                    good = Bad(part, $"the vertical curve's {attribute} is negative");
                else if (value != 0)
                    keys.Add((key, Nodes.Length(Math.Abs(value), length, spot))); // Some write a crest's radius as negative; the grades say which it is.
            }
            if (part.Name == "ParaCurve")
                Add("curve", "length");
            if (part.Name == "CircCurve")
                Add("curve_radius", "radius");
            if (part.Name == "UnsymParaCurve")
            {
                Add("curve_in", "lengthIn");
                Add("curve_out", "lengthOut");
            }
            nodes.Add(Nodes.Map(spot, [.. keys]));
        }
        if (good && nodes.Count == 0)
            good = Bad(profile, "the profile has no points");
        return good ? nodes : null;

        bool Bad(XmlPart part, string message)
        {
            problems.Add(ProblemCodes.CannotUse, file.File.At(part.Line, part.Column), message, "mend it in the program that wrote it", file.File.Spot);
            return false;
        }
    }
}
