using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;

namespace SheetGen.Layout.Clearance;

/// <summary>
/// Checks a finished layout against every rule. It trusts nothing but the printed figures of the nails: holes are made anew from
/// station, elevation, angles and length, and what a nail's status says is not believed.
/// </summary>
public static class Checker
{
    /// <summary>
    /// Findings by kind, each kind in the order of the layout; and the clear distance and margins of each nail by mark.
    /// </summary>
    /// <param name="threads">Most threads to use; the report does not depend on it.</param>
    public static ClearanceReport Check(WallProject project, NailLayout layout, int threads = 1)
    {
        IReadOnlyList<Nail> nails = layout.Nails;
        var faces = project.Walls.ToDictionary(w => w.Name, w => new Face(w));
        var holes = new Hole[nails.Count];
        var legs = new FaceLeg[nails.Count];
        var findings = new List<Finding>();
        for (int i = 0; i < nails.Count; i++)
        {
            Nail nail = nails[i];
            Face face = faces[nail.Wall.Name];
            var head = Head.AsStationed(nail);
            legs[i] = FaceLeg.Of(face, head.Along);
            holes[i] = face.HoleAt(
                head, nail.Splay, nail.Inclination, nail.Length, nail.HoleDiameter, project.Rules.Drift);
            if (!IsSame(holes[i], nail.Hole))
                findings.Add(OfHole(nail));
        }
        var scene = new ClearanceScene(project, holes);
        findings.AddRange(ClearFindings.OfNails(scene, nails, project.Unit, threads));
        findings.AddRange(ClearFindings.OfObstacles(scene, nails, legs, project.Unit));
        List<Finding> clear = [.. findings];
        findings.AddRange(CoverFindings.Of(project, layout));
        findings.AddRange(EdgeFindings.Of(project, nails, faces));
        findings.AddRange(SpacingFindings.Of(project, nails, faces));
        findings.AddRange(SpacingFindings.OnOneAnother(clear, layout, project.Unit));
        findings.AddRange(TurnFindings.Unresolved(nails, clear, project.Unit));
        findings.AddRange(TurnFindings.Noted(project, nails));
        findings.AddRange(TurnFindings.LeftOut(layout));
        findings.AddRange(TestNailFindings.Of(project, layout));
        findings.AddRange(GuidanceFindings.Of(project));
        return new ClearanceReport(Accepting.Apply(project, findings), NailClearances.Of(scene, nails, legs));
    }

    private static bool IsSame(in Hole made, in Hole stated)
    {
        return (made.Head - stated.Head).Length <= Tolerance.SameLength
            && (made.Tip - stated.Tip).Length <= Tolerance.SameLength
            && Math.Abs(made.Radius - stated.Radius) <= Tolerance.SameLength
            && Math.Abs(made.Drift - stated.Drift) <= Tolerance.SameLength;
    }

    private static Finding OfHole(Nail nail) => new()
    {
        Code = FindingCode.Hole,
        Severity = Severity.Error,
        Wall = nail.Wall,
        Nails = [nail.Mark],
        Station = nail.Station,
        Elevation = nail.Elevation,
        Message = $"{nail.Mark}: its hole in the layout is not the one that its station, elevation, angles and length give",
    };
}
