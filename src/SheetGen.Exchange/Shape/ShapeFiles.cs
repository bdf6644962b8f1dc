using System.Buffers.Binary;
using System.Text;
using NetTopologySuite.Features;
using NetTopologySuite.Geometries;
using NetTopologySuite.IO.Esri;
using NetTopologySuite.IO.Esri.Dbf.Fields;
using NetTopologySuite.IO.Esri.Shapefiles.Writers;
using SheetGen.Exchange.GeoJson;

namespace SheetGen.Exchange.Shape;

/// <summary>
/// Two shapefiles: nail-heads (points with elevation) and nail-traces (lines with elevation), easting and northing in the project's unit.
/// No .prj goes with them: the project file words its zone freely, and a projection is not guessed.
/// </summary>
internal static class ShapeFiles
{
    private static readonly string[] Endings = [".shp", ".shx", ".dbf", ".cpg"];

    public static IReadOnlyList<string> FileNames { get; } =
        [.. new[] { "nail-heads", "nail-traces" }.SelectMany(name => Endings.Select(ending => name + ending))];

    public static IReadOnlyList<byte[]> Make(ExchangeInput input)
    {
        var factory = new GeometryFactory();
        return
        [
            .. Files(NailFeatures.Heads(input, factory), ShapeType.PointZM),
            .. Files(NailFeatures.Traces(input, factory), ShapeType.PolyLineZM),
        ];
    }

    private static byte[][] Files(IEnumerable<Feature> features, ShapeType type)
    {
        using MemoryStream shp = new(), shx = new(), dbf = new();
        List<Feature> all = [.. features];
        var options = new ShapefileWriterOptions(type, [.. NailFeatures.Fields.Select(f => Field(f, all))]) { Encoding = Encoding.UTF8 };
        using (ShapefileWriter writer = Shapefile.OpenWrite(shp, shx, dbf, new MemoryStream(), options))
            writer.Write(all);
        return [WithLength(shp.ToArray()), WithLength(shx.ToArray()), WithoutDate(dbf.ToArray()), Encoding.ASCII.GetBytes("UTF-8")];
    }

    /// <summary>A text field as wide as its longest text in UTF-8, up to the 254 bytes that a dBASE table has.</summary>
    private static DbfField Field(NailField field, List<Feature> features) => field.IsText
        ? new DbfCharacterField(field.Name, Math.Clamp(features.Max(f => (int?)Encoding.UTF8.GetByteCount((string)f.Attributes[field.Name])) ?? 1, 1, 254))
        : new DbfNumericDoubleField(field.Name, 19, 6);

    /// <summary>The file with its own length in the header (big-endian, in words of 16 bits), which the writer leaves out where there is no record.</summary>
    private static byte[] WithLength(byte[] file)
    {
        BinaryPrimitives.WriteInt32BigEndian(file.AsSpan(24), file.Length / 2);
        return file;
    }

    /// <summary>The table with a fixed date of change (bytes 1 to 3: years since 1900, month, day), so that the same input gives the same bytes.</summary>
    private static byte[] WithoutDate(byte[] table)
    {
        (table[1], table[2], table[3]) = (80, 1, 1);
        return table;
    }
}
