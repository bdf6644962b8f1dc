using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Advice;

/// <summary>Nail heads below the finished grade in front of the wall: they are drilled in a trench and buried.</summary>
internal static class BelowGradeAdvice
{
    public static IEnumerable<Finding> Of(WallProject project, NailLayout layout)
    {
        HeadsBelowGrade rule = project.Rules.HeadsBelowGrade;
        if (rule == HeadsBelowGrade.Allow)
            yield break;
        double quantum = Lengths.Quantum(project.Unit);
        string unit = Lengths.Symbol(project.Unit);
        foreach (Wall wall in project.Walls.Where(w => w.FinishedGrade is not null))
        {
            foreach (Section section in wall.Sections)
            {
                double Depth(Nail nail) => Math.Min(wall.FinishedGrade!.At(nail.Along), wall.FinishedGrade.Before(nail.Along)) - nail.Elevation;
                Nail[] below = [.. layout.Nails.Where(n => n.Wall.Name == wall.Name && n.Section.Name == section.Name && n.Kind != NailKind.Verification && Depth(n) > quantum)];
                if (below.Length == 0)
                    continue;
                Nail deepest = below.MaxBy(Depth)!;
                string asks = rule == HeadsBelowGrade.None ? "; rules: heads_below_grade allows none" : "; rules: heads_below_grade: allow or none says what the engineer wants";
                yield return new Finding
                {
                    Code = FindingCode.Guidance,
                    Severity = rule == HeadsBelowGrade.None ? Severity.Error : Severity.Warning,
                    Wall = wall,
                    Station = wall.StationOf(section.Start),
                    ToStation = wall.StationOf(section.End),
                    Message = FormattableString.Invariant($"section {section.Name}: {below.Length} {(below.Length == 1 ? "nail" : "nails")} ({below.Sum(n => n.Length):#,##0.##} {unit}) {(below.Length == 1 ? "has its head" : "have their heads")} below the finished grade, the deepest {Depth(deepest):0.00} {unit} ({deepest.Mark}){asks}"),
                };
            }
        }
    }
}
