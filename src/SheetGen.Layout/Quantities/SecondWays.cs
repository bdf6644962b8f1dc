using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Quantities;

/// <summary>A second way to each main quantity, with the share by which the two may differ.</summary>
internal static class SecondWays
{
    public static List<CheckLine> Make(
        WallProject project, IReadOnlyList<SectionQuantities> sections, IReadOnlyList<NailQuantity> nails,
        IReadOnlyDictionary<Section, double> columnSums, IReadOnlyList<ExcavationLift> lifts, IReadOnlyList<PanelCount> panels)
    {
        bool feet = Lengths.IsFoot(project.Unit);
        string length = feet ? "ft" : "m", area = length + "2";
        var lines = new List<CheckLine>();
        foreach (SectionQuantities section in sections)
        {
            Section grid = section.Section;
            string name = section.Wall.Name + ", section " + grid.Name;
            double count = Amount(section, QuantityName.NailCount), face = Amount(section, QuantityName.FaceArea);
            lines.Add(new CheckLine(
                QuantityName.NailCount, "Production nails, " + name, "each", count,
                section.Grid.Sum(g => g.GridStations - g.LeftOut + g.Added), "grid stations - left out + added", 0)
            { Source = CheckSource.Grid, Section = section });
            lines.Add(new CheckLine(
                QuantityName.FaceArea, "Face area, " + name, area, face, columnSums[grid], "sum of narrow columns between the bends", QuantityTolerance.SecondColumns)
            { Section = section });
        }
        lines.AddRange(Faces(sections, columnSums, lifts, panels, length));
        List<NailQuantity> production = [.. nails.Where(n => !n.IsSacrificial)];
        lines.Add(new CheckLine(
            QuantityName.FaceLength, "Length from the face", length, production.Sum(n => n.Nail.Length),
            production.Sum(n => (n.Nail.Hole.Tip - n.Nail.Hole.Head).Length), "sum of the distances from head to tip", QuantityTolerance.SecondLength)
        { Source = CheckSource.Coordinates });
        double steel = feet ? 490 : 7850;
        if (production.TrueForAll(n => n.Weight is not null && !n.Nail.Bar.IsWeightGiven))
        {
            lines.Add(new CheckLine(
                QuantityName.BarWeight, "Bar weight", feet ? "lb" : "kg", production.Sum(n => n.Weight ?? 0),
                production.Sum(n => n.BarLength * n.BarArea * steel),
                feet ? "bar length x nominal area x 490 lb/ft3" : "bar length x nominal area x 7850 kg/m3", QuantityTolerance.SecondSteel)
            { Source = CheckSource.Density });
        }
        lines.Add(new CheckLine(
            QuantityName.GroutVolume, "Theoretical grout", length + "3", production.Sum(n => n.Grout),
            production.GroupBy(n => (n.Nail.HoleDiameter, n.BarArea))
                .Sum(g => (Math.PI / 4 * g.Key.HoleDiameter * g.Key.HoleDiameter - g.Key.BarArea) * g.Sum(n => n.Nail.Length)),
            "(hole area - bar area) x hole length, by hole and bar", QuantityTolerance.SecondVolume)
        { Source = CheckSource.HoleAreas });
        return lines;
    }

    private static IEnumerable<CheckLine> Faces(
        IReadOnlyList<SectionQuantities> sections, IReadOnlyDictionary<Section, double> columnSums, IReadOnlyList<ExcavationLift> lifts,
        IReadOnlyList<PanelCount> panels, string length)
    {
        double Sum(string name) => sections.Sum(s => Amount(s, name));
        yield return new CheckLine(
            QuantityName.FaceArea, "Face area, all", length + "2", Sum(QuantityName.FaceArea), lifts.Sum(l => l.CutArea), "sum of the excavation lifts", QuantityTolerance.SecondArea)
        { Source = CheckSource.Lifts };
        if (sections.Any(s => s.Amounts[QuantityName.ShotcreteVolume].Amount is not null))
        {
            yield return new CheckLine(
                QuantityName.ShotcreteVolume, "Shotcrete, neat", length + "3", Sum(QuantityName.ShotcreteVolume),
                sections.Sum(s => columnSums[s.Section] * (s.Wall.Facing?.Shotcrete ?? 0)), "column sums x thickness", QuantityTolerance.SecondColumns)
            { Source = CheckSource.Columns };
        }
        if (panels.Count > 0)
        {
            yield return new CheckLine(
                QuantityName.PanelArea, "Panel area", length + "2", panels.Sum(p => p.Area), PlumbArea(sections), "column sums of the plumb face", QuantityTolerance.SecondColumns);
        }
    }

    /// <summary>Column sums of the plumb faces that panels stand on.</summary>
    private static double PlumbArea(IReadOnlyList<SectionQuantities> sections) => sections.Select(s => s.Wall).Distinct().Where(w => w.HasPanels)
        .Sum(w => w.Sections.Sum(s => ColumnSums.Area(new Face(w with { Batter = null }), s)));

    private static double Amount(SectionQuantities section, string name) => section.Amounts[name].Amount ?? 0;
}
