using FsCheck.Xunit;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using Xunit;

namespace SheetGen.Tests.Drawing.Set;

public class SheetPackerTests
{
    private static readonly Box Area = new(20, 10, 720, 510);

    private static SheetPart Part(PartKind kind, double width, double height) => new(kind, width, height, (_, _) => SheetContent.Empty);

    [Property(MaxTest = 100)]
    public void Every_part_stands_once_inside_the_area_and_on_no_other(int seed)
    {
        var random = new Random(seed);
        SheetPart[][] groups = [.. new[] { PartKind.Section, PartKind.Detail, PartKind.Table }
            .Select(k => Enumerable.Range(0, random.Next(0, 14)).Select(_ => Part(k, random.Next(20, 700), random.Next(10, 500))).ToArray())];

        IReadOnlyList<PackedSheet> sheets = SheetPacker.Pack(groups, Area);

        Assert.Equal(groups.Sum(g => g.Length), sheets.Sum(s => s.Parts.Count));
        Assert.Equal(groups.SelectMany(g => g).ToHashSet(), sheets.SelectMany(s => s.Parts).Select(p => p.Part).ToHashSet());
        foreach (PackedSheet sheet in sheets)
        {
            Box[] boxes = [.. sheet.Parts.Select(p => new Box(p.At.X, p.At.Y - p.Part.Height, p.At.X + p.Part.Width, p.At.Y))];
            Assert.All(boxes, b => Assert.True(Area.Grown(1e-6).Contains(b)));
            for (int i = 0; i < boxes.Length; i++)
                Assert.DoesNotContain(boxes.Skip(i + 1), b => b.Grown(-1e-6).Overlaps(boxes[i]));
        }
    }

    [Property(MaxTest = 200)]
    public void Sections_and_details_are_read_in_their_order(int seed)
    {
        var random = new Random(seed);
        SheetPart[][] groups = [.. new[] { PartKind.Section, PartKind.Detail }
            .Select(k => Enumerable.Range(0, random.Next(1, 14)).Select(_ => Part(k, random.Next(100, 400), random.Next(50, 260))).ToArray())];

        IReadOnlyList<PackedSheet> sheets = SheetPacker.Pack(groups, Area);

        foreach (SheetPart[] group in groups)
        {
            (int Sheet, double Top, double Bottom, double X)[] places = [.. group.Select(g => sheets.SelectMany((s, i) => s.Parts.Where(p => ReferenceEquals(p.Part, g))
                .Select(p => (i, Math.Round(p.At.Y, 3), Math.Round(p.At.Y - g.Height, 3), p.At.X))).Single())];
            for (int i = 1; i < places.Length; i++)
            {
                (int sheet, double top, _, double x) = places[i];
                var before = places[i - 1];
                // Beside the one before it, in a row below all of that one's row, or on a later sheet.
                bool isBeside = sheet == before.Sheet && top == before.Top && x > before.X;
                bool isBelow = sheet == before.Sheet && places.Take(i).Where(p => p.Sheet == sheet && p.Top == before.Top).All(p => top <= p.Bottom);
                Assert.True(isBeside || isBelow || sheet > before.Sheet, $"{before} then {places[i]}");
            }
        }
    }

    [Fact]
    public void Few_parts_of_three_kinds_share_one_sheet()
    {
        IReadOnlyList<PackedSheet> sheets = SheetPacker.Pack(
            [[Part(PartKind.Section, 200, 150)], [Part(PartKind.Detail, 170, 160)], [Part(PartKind.Table, 300, 100)]], Area);

        Assert.Equal([PartKind.Section, PartKind.Detail, PartKind.Table], Assert.Single(sheets).Kinds);
    }

    [Fact]
    public void Kinds_that_fill_sheets_of_their_own_stay_apart()
    {
        SheetPart[] sections = [.. Enumerable.Repeat(0, 6).Select(_ => Part(PartKind.Section, 230, 240))];
        SheetPart[] details = [.. Enumerable.Repeat(0, 12).Select(_ => Part(PartKind.Detail, 175, 166))];

        IReadOnlyList<PackedSheet> sheets = SheetPacker.Pack([sections, details], Area);

        Assert.Equal(2, sheets.Count);
        Assert.All(sheets, s => Assert.Single(s.Kinds));
    }

    /// <summary>Tables stand in what room the sheets of others leave, where that saves a sheet; else on their own.</summary>
    [Fact]
    public void Tables_stand_beside_sections_where_that_saves_a_sheet()
    {
        SheetPart[] sections = [Part(PartKind.Section, 400, 480)], details = [Part(PartKind.Detail, 690, 490)];
        SheetPart Table(double height) => Part(PartKind.Table, 280, height);

        Assert.Equal(2, SheetPacker.Pack([sections, details, [Table(200), Table(250)]], Area).Count);
        IReadOnlyList<PackedSheet> more = SheetPacker.Pack([sections, details, [Table(300), Table(300)]], Area);
        Assert.Equal(3, more.Count);
        Assert.Equal(4, more.Sum(s => s.Parts.Count));
        Assert.All(more, s => Assert.Single(s.Kinds));
    }
}
