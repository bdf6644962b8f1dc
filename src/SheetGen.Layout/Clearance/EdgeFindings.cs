using SheetGen.Layout.Rows;
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
        Dictionary<string, FaceOutline> outlines = faces.ToDictionary(f => f.Key, f => new FaceOutline(f.Value, project.Rules.EdgeMin));
        double edgeMin = project.Rules.EdgeMin, cornerClear = project.Rules.CornerClear;
        double slack = Tolerance.Checked(project.Unit);
        foreach (Nail nail in nails)
        {
            Face face = faces[nail.Wall.Name];
            FaceOutline outline = outlines[nail.Wall.Name];
            var head = Head.AsStationed(nail);
            (double distance, string edge) = outline.Nearest(head);
            if (distance < edgeMin - slack)
                yield return Of(nail, distance, edgeMin, $"the {edge} of the face", project.Unit);
            foreach (Opening opening in nail.Wall.Openings)
            {
                double toOpening = outline.ToOpening(opening, head);
                if (toOpening < edgeMin - slack)
                    yield return Of(nail, toOpening, edgeMin, "opening " + opening.Name, project.Unit);
            }
            double toCorner = face.ToMitre(face.LegAt(head.Along), head);
            if (toCorner < cornerClear - slack)
                yield return Of(nail, toCorner, cornerClear, "a corner", project.Unit);
        }
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
