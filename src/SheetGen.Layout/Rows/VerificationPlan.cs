using SheetGen.Model;

namespace SheetGen.Layout.Rows;

/// <summary>A verification test nail that a wall asks for.</summary>
/// <param name="Target">Place along the layout line that it should stand near: they are spread evenly.</param>
/// <param name="Number">Its number in its section, from 1.</param>
internal sealed record VerificationPlan(Section Section, Along Target, int Number)
{
    /// <summary>All verification test nails that a wall asks for: the wall's own first, then by section.</summary>
    public static IEnumerable<VerificationPlan> Of(Wall wall)
    {
        Section[] sharing = [.. wall.Sections.Where(s => s.TestNails.VerificationPerWall && s.TestNails.Verification > 0)];
        int count = sharing.Select(s => s.TestNails.Verification).DefaultIfEmpty(0).Max();
        var numbers = new Dictionary<Section, int>(ReferenceEqualityComparer.Instance);
        for (int i = 0; i < count; i++)
        {
            double target = wall.Start + (wall.End - wall.Start) * (i + 0.5) / count;
            Section section = wall.Sections.First(s => target <= s.End || s == wall.Sections[^1]);
            numbers[section] = numbers.GetValueOrDefault(section) + 1;
            yield return new VerificationPlan(section, new Along(target), numbers[section]);
        }
        foreach (Section section in wall.Sections.Where(s => !s.TestNails.VerificationPerWall))
        {
            // One of the wall's may stand in this section: its own are numbered after it.
            int before = numbers.GetValueOrDefault(section);
            for (int i = 0; i < section.TestNails.Verification; i++)
                yield return new VerificationPlan(section, new Along(section.Start + (section.End - section.Start) * (i + 0.5) / section.TestNails.Verification), before + i + 1);
        }
    }
}
