using System.Globalization;
using SheetGen.Drawing.Elevation;
using SheetGen.Dxf;
using SheetGen.Model;
using SheetGen.Model.Units;

namespace SheetGen.Writers.Dxf.Edited;

/// <summary>A block reference of an edited drawing that is, or may be, a nail.</summary>
internal sealed class NailBlock
{
    private NailBlock(DxfInsert insert, string? mark)
    {
        Insert = insert;
        Mark = mark;
    }

    public DxfInsert Insert { get; }

    /// <summary>The full mark that the reference carries for programs; null where it was lost.</summary>
    public string? Mark { get; }

    public bool HasAttributes => Insert.Attributes.Count > 0;

    /// <summary>Where the reference stands on the drawing that was written; set when that is known.</summary>
    public DxfPoint At { get; set; }

    /// <summary>The nail of a reference: by its extended data, its attributes, or the name of its block; null for any other reference.</summary>
    public static NailBlock? Of(DxfInsert insert)
    {
        string? mark = XDataOf(insert).FirstOrDefault();
        bool isNail = mark is not null || insert.Block.StartsWith("NAIL-", StringComparison.OrdinalIgnoreCase)
            || (Value(insert, NailSymbols.Mark) is not null && Value(insert, "INCLINATION") is not null);
        return isNail ? new NailBlock(insert, mark is { Length: > 0 } ? mark : null) : null;
    }

    public static IEnumerable<string> XDataOf(DxfItem item) =>
        item.XData.Where(x => x.AppId.Equals("SHEETGEN", StringComparison.OrdinalIgnoreCase)).SelectMany(x => x.Values).OfType<DxfXValue.Text>().Select(t => t.Value);

    /// <summary>The value of an attribute; null where the reference has no such attribute or it is empty.</summary>
    public string? Value(string tag) => Value(Insert, tag);

    /// <summary>True where the reference has an attribute without a value.</summary>
    public bool IsEmptied(string tag) => Value(tag) is null && Insert.Attributes.Any(a => a.Tag.Equals(tag, StringComparison.OrdinalIgnoreCase));

    /// <summary>A number with its unit behind it or none; null where it is none, or in another unit.</summary>
    /// <param name="unit">Unit of a length; null for degrees.</param>
    public static double? Number(string text, LengthUnit? unit)
    {
        string[] signs = unit switch { null => ["°", "deg"], LengthUnit.Metre => ["m"], _ => ["'", "us-ft", "ft"] };
        string plain = text.Trim(), sign = Array.Find(signs, s => plain.EndsWith(s, StringComparison.OrdinalIgnoreCase)) ?? "";
        plain = plain[..^sign.Length];
        return double.TryParse(plain, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && double.IsFinite(value) ? value : null;
    }

    /// <summary>A station as printed or as a plain number; null where it is none.</summary>
    public static double? Station(string text, LengthUnit unit)
    {
        string[] parts = text.Trim().Split('+');
        if (parts.Length == 1)
            return Number(text, unit);
        return parts.Length == 2 && Number(parts[0], unit) is { } head && Number(parts[1], unit) is { } rest ? head * PrintedStation.Full(unit) + (parts[0].StartsWith('-') ? -rest : rest) : null;
    }

    private static string? Value(DxfInsert insert, string tag) =>
        insert.Attributes.FirstOrDefault(a => a.Tag.Equals(tag, StringComparison.OrdinalIgnoreCase))?.Text.Value.Trim() is { Length: > 0 } value ? value : null;
}
