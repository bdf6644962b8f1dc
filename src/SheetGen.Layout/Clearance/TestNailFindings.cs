using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;

namespace SheetGen.Layout.Clearance;

/// <summary>Verification test nails that a wall asks for and that the layout does not have.</summary>
internal static class TestNailFindings
{
    public static IEnumerable<Finding> Of(WallProject project, NailLayout layout)
    {
        foreach (Wall wall in project.Walls)
        {
            foreach (IGrouping<Section, VerificationPlan> section in VerificationPlan.Of(wall).GroupBy(p => p.Section))
            {
                int asked = section.Count();
                int there = layout.Nails.Count(n => n.Wall.Name == wall.Name && n.Section.Name == section.Key.Name && n.Kind == NailKind.Verification);
                if (there >= asked)
                    continue;
                yield return new Finding
                {
                    Code = FindingCode.TestNail,
                    Severity = Severity.Warning,
                    Wall = wall,
                    Station = wall.StationOf(section.Key.Start),
                    ToStation = wall.StationOf(section.Key.End),
                    Message = $"section {section.Key.Name} asks for {asked} verification test {(asked == 1 ? "nail" : "nails")}, {(there == 0 ? "none" : there)} of them "
                        + $"found a place clear of everything; the engineer has to choose where the missing {(asked - there == 1 ? "one goes" : "ones go")}",
                };
            }
        }
    }
}
