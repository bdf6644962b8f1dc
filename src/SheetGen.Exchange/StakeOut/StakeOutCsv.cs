using SheetGen.Exchange.Common;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Exchange.StakeOut;

/// <summary>
/// stakeout.csv: a row a nail in station order, for a data collector. Coordinates and lengths in the project's unit; azimuth clockwise from grid
/// north and dip below horizontal, in degrees; the remark says what must not be overlooked.
/// </summary>
internal static class StakeOutCsv
{
    public const string FileName = "stakeout.csv";

    public static byte[] Make(ExchangeInput input)
    {
        using var stream = new MemoryStream();
        using (var rows = new CsvRows(stream))
        {
            rows.Write("mark", "northing", "easting", "elevation", "azimuth", "dip", "length", "remark");
            foreach (Nail nail in NailFigures.InStationOrder(input))
            {
                Vector3D head = NailFigures.Absolute(input, nail.Hole.Head);
                rows.Write(
                    nail.Mark, PlainNumber.Fixed(head.N, 4), PlainNumber.Fixed(head.E, 4), PlainNumber.Format(nail.Elevation, 4, 6),
                    PlainNumber.Fixed(NailFigures.Azimuth(nail), 4) is var azimuth && azimuth == "360.0000" ? "0.0000" : azimuth,
                    PlainNumber.Format(nail.Inclination, 0, 6), PlainNumber.Format(nail.Length, Lengths.Decimals(input.Project.Unit), 6),
                    NailFigures.Remark(nail));
            }
        }
        return stream.ToArray();
    }
}
