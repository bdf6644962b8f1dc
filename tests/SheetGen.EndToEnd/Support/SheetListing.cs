using System.Globalization;
using SheetGen.Dxf;
using Xunit;

namespace SheetGen.EndToEnd.Support;

/// <summary>A drawing as text: each text and block reference with its place, and the number of other entities by layer; sorted.</summary>
internal static class SheetListing
{
    public static void Write(string drawing, string listing)
    {
        DxfReadResult read = DxfReader.Read(File.ReadAllBytes(drawing));
        Assert.True(read.Succeeded, read.Error?.Message);
        Assert.Empty(read.Warnings);
        var lines = new List<string>();
        Add("model", read.Document.Model, lines);
        foreach (DxfLayout layout in read.Document.Layouts)
        {
            lines.Add(Invariant($"{layout.Name} paper {layout.Width:0.#} x {layout.Height:0.#}, viewports {layout.Viewports.Count}"));
            Add(layout.Name, layout.Entities, lines);
        }
        File.WriteAllText(listing, string.Join("\n", lines.Order(StringComparer.Ordinal)) + "\n");
    }

    private static void Add(string space, IEnumerable<DxfEntity> entities, List<string> lines)
    {
        var counts = new SortedDictionary<string, int>(StringComparer.Ordinal);
        foreach (DxfEntity entity in entities)
        {
            switch (entity)
            {
                case DxfText text:
                    lines.Add(Invariant($"{space} text {Place(text.Position)} {text.Layer} {text.Value}"));
                    break;
                case DxfMText text:
                    lines.Add(Invariant($"{space} text {Place(text.Position)} {text.Layer} {text.Value.ReplaceLineEndings("\\n")}"));
                    break;
                case DxfInsert insert:
                    string attributes = string.Join(' ', insert.Attributes.Select(a => $"{a.Tag}={a.Text.Value}"));
                    lines.Add(Invariant($"{space} block {insert.Block} {Place(insert.Position)} {insert.Layer} {attributes}").TrimEnd());
                    break;
                default:
                    string kind = $"{entity.GetType().Name[3..].ToLowerInvariant()} {entity.Layer}";
                    counts[kind] = counts.GetValueOrDefault(kind) + 1;
                    break;
            }
        }
        lines.AddRange(counts.Select(c => Invariant($"{space} {c.Key}: {c.Value}")));
    }

    private static string Place(DxfPoint point) => Invariant($"{point.X:0.00},{point.Y:0.00}");

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
