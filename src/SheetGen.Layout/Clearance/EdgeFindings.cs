using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Clearance;

/// <summary>Heads off the face or too near to its outline, an opening or a corner. Tolerance: two quanta.</summary>
internal static class EdgeFindings
{
    public static IEnumerable<Finding> Of(WallProject project, IReadOnlyList<Nail> nails, IReadOnlyDictionary<string, Face> faces)
    {
        var outlines = new Dictionary<FacePlace, LegOutline>();
        double edgeMin = project.Rules.EdgeMin, cornerClear = project.Rules.CornerClear;
        double slack = 2 * Lengths.Quantum(project.Unit) + 1e-9;
        foreach (Nail nail in nails)
        {
            Face face = faces[nail.Wall.Name];
            double along = nail.Wall.LayoutLine.AlongOf(nail.Station);
            Leg leg = face.LegAt(along);
            var place = new FacePlace(nail.Wall.Name, leg.Index);
            if (!outlines.TryGetValue(place, out LegOutline? outline))
                outlines[place] = outline = new LegOutline(face, leg);
            (double distance, string edge) = outline.Nearest(along, nail.Elevation);
            if (distance < edgeMin - slack)
                yield return Of(nail, distance, edgeMin, $"the {edge} of the face", project.Unit);
            foreach (Opening opening in nail.Wall.Openings)
            {
                double toOpening = outline.ToOpening(opening, along, nail.Elevation);
                if (toOpening < edgeMin - slack)
                    yield return Of(nail, toOpening, edgeMin, "opening " + opening.Name, project.Unit);
            }
            if (ToCorner(face, leg, along, nail.Elevation) is { } toCorner && toCorner < cornerClear - slack)
                yield return Of(nail, toCorner, cornerClear, "a corner", project.Unit);
        }
    }

    /// <summary>Distance along the face to the nearer mitre at the head's elevation; negative beyond it; null for a leg without corner.</summary>
    private static double? ToCorner(Face face, Leg leg, double along, double elevation)
    {
        double? least = null;
        if (leg.StartCorner is { } first)
            least = face.Distance(leg.Start, along, elevation) - face.MitreCut(first, elevation);
        if (leg.EndCorner is { } last)
            least = Math.Min(least ?? double.PositiveInfinity, face.Distance(along, leg.End, elevation) - face.MitreCut(last, elevation));
        return least;
    }

    private static Finding Of(Nail nail, double distance, double required, string edge, LengthUnit unit)
    {
        string asked = Figures.Length(required, unit);
        return new Finding
        {
            Code = FindingCode.Edge,
            Severity = Severity.Error,
            Wall = nail.Wall,
            Nails = [nail.Mark],
            Station = nail.Station,
            Elevation = nail.Elevation,
            Clear = distance,
            Required = required,
            Message = distance < 0
                ? $"{nail.Mark} stands {Figures.Depth(-distance, unit)} beyond {edge}; {asked} inside is required"
                : $"{nail.Mark} stands {Figures.Beside(distance, required, unit)} from {edge}; {asked} is required",
        };
    }
}
