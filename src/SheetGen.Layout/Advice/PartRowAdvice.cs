using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Advice;

/// <summary>Counts the nails of part rows, and tries what each other choice of rows would need.</summary>
internal static class PartRowAdvice
{
    public static IEnumerable<Finding> Of(WallProject project, NailLayout layout)
    {
        string unit = Lengths.Symbol(project.Unit);
        foreach (Wall wall in project.Walls)
        {
            foreach (Section section in wall.Sections)
            {
                Nail[] nails = [.. layout.Nails.Where(n => n.Wall.Name == wall.Name && n.Section.Name == section.Name && n.Kind != NailKind.Verification)];
                Nail[] part = [.. nails.Where(n => n.Row.IsPart)];
                if (part.Length == 0)
                    continue;
                yield return new Finding
                {
                    Code = FindingCode.Guidance,
                    Severity = Severity.Notice,
                    Wall = wall,
                    Station = wall.StationOf(section.Start),
                    ToStation = wall.StationOf(section.End),
                    Message = FormattableString.Invariant($"section {section.Name}: {part.Length} of {nails.Length} {(nails.Length == 1 ? "nail" : "nails")} ({part.Sum(n => n.Length):#,##0.##} {unit}) {(part.Length == 1 ? "stands" : "stand")} in {Counted(part)} between grid rows that are cut off by the top or the bottom; {Tried(project, wall, section, part.Length)}"),
                };
            }
        }
    }

    private static string Counted(Nail[] part)
    {
        int rows = part.Select(n => n.Row).Distinct().Count();
        return FormattableString.Invariant($"{rows} part {(rows == 1 ? "row" : "rows")}");
    }

    /// <summary>What the other choices need, each made as the placing makes it.</summary>
    private static string Tried(WallProject project, Wall wall, Section section, int now)
    {
        var words = new List<string>();
        foreach (RowKind kind in Enum.GetValues<RowKind>().Where(k => k != section.Rows))
        {
            (int parts, int all) = Needed(project, wall, section, kind);
            if (parts < now)
                words.Add(FormattableString.Invariant($"rows: {Word(kind)} would need {(parts == 0 ? "none" : parts)} of these ({all} {(all == 1 ? "nail" : "nails")} in all)"));
        }
        return words.Count == 0 ? "no other choice of rows needs fewer" : string.Join(", ", words);
    }

    private static (int Parts, int All) Needed(WallProject project, Wall wall, Section section, RowKind kind)
    {
        Section other = section with { Rows = kind };
        var face = new Face(wall with { Sections = [.. wall.Sections.Select(s => s.Name == section.Name ? other : s)] });
        Bay[] bays = [.. Bay.Of(face, project.Rules, project.Unit).Where(b => b.Section.Name == section.Name)];
        List<RowHeads> rows = SectionRows.Make(bays, new FaceOutline(face, project.Rules.EdgeMin));
        return (rows.Where(r => r.IsPart).Sum(r => r.Places.Count), rows.Sum(r => r.Places.Count));
    }

    private static string Word(RowKind kind) => kind switch
    {
        RowKind.Level => "level",
        RowKind.Parallel => "parallel",
        _ => "top_parallel",
    };
}
