using System.Globalization;
using SheetGen.Dxf;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Writers.Dxf;

/// <summary>Nails counted and lengths summed from the finished drawing, read back: a second way that shares nothing with the take-off.</summary>
public static class DrawingRecount
{
    /// <summary>The quantities with the recount added to their checks.</summary>
    /// <param name="sheets">The bytes of sheets.dxf.</param>
    public static QuantityTable AddTo(QuantityTable quantities, byte[] sheets)
    {
        DxfInsert[] nails = [.. (DxfReader.Read(sheets).Document?.Model.OfType<DxfInsert>() ?? []).Where(IsProductionNail)];
        double count = nails.Length, sum = nails.Sum(n => double.Parse(Value(n, "LENGTH")!, CultureInfo.InvariantCulture));
        string unit = Lengths.IsFoot(quantities.Unit) ? "ft" : "m";
        return quantities with
        {
            Checks =
            [
                .. quantities.Checks,
                new CheckLine(
                    QuantityName.NailCount, "Production nails, all", "each", quantities.Nails.Count(n => !n.IsSacrificial), count,
                    "nail blocks counted in sheets.dxf, read back", 0),
                new CheckLine(
                    QuantityName.FaceLength, "Length from the face, all", unit,
                    quantities.Nails.Where(n => !n.IsSacrificial).Sum(n => n.Nail.Length), sum,
                    "LENGTH of the nail blocks in sheets.dxf, read back", 1e-6),
            ],
        };
    }

    private static bool IsProductionNail(DxfInsert insert) => Value(insert, "MARK") is not null && Value(insert, "ROW") is { } row && row != "0";

    private static string? Value(DxfInsert insert, string tag) => insert.Attributes.FirstOrDefault(a => a.Tag == tag)?.Text.Value;
}
