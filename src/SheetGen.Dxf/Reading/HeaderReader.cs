namespace SheetGen.Dxf;

/// <summary>Reads the settings of a drawing.</summary>
internal static class HeaderReader
{
    internal static DxfHeader Read(Dictionary<string, Record> variables)
    {
        int Whole(string name, int otherwise) => variables.TryGetValue(name, out var r) ? r.Integer(70, otherwise) : otherwise;
        string Name(string name, int code, string otherwise) => variables.TryGetValue(name, out var r) ? r.Name(code, otherwise) : otherwise;

        var header = new DxfHeader();
        var scale = variables.TryGetValue("$LTSCALE", out var record) ? record.Real(40, 1) : 1;
        return header with
        {
            Units = (DxfUnits)Whole("$INSUNITS", 0),
            Measurement = Whole("$MEASUREMENT", 0) == 0 ? DxfMeasurement.Imperial : DxfMeasurement.Metric,
            Extents = Extents(variables),
            LinetypeScale = scale > 0 ? scale : 1,
            PaperSpaceLinetypeScale = Whole("$PSLTSCALE", 1) != 0,
            LinearPrecision = Math.Clamp(Whole("$LUPREC", header.LinearPrecision), 0, 8),
            Layer = Name("$CLAYER", 8, header.Layer),
            TextStyle = Name("$TEXTSTYLE", 7, header.TextStyle),
            DimStyle = Name("$DIMSTYLE", 2, header.DimStyle),
        };
    }

    /// <summary>The extents; null where a program has written none or its empty ones, the least above the greatest.</summary>
    private static DxfExtents? Extents(Dictionary<string, Record> variables)
    {
        if (!variables.TryGetValue("$EXTMIN", out var min) || !variables.TryGetValue("$EXTMAX", out var max))
            return null;
        var extents = new DxfExtents(min.Point(10).Xy, max.Point(10).Xy);
        return extents.Width >= 0 && extents.Height >= 0 && extents.Width < NumberCoding.Greatest ? extents : null;
    }
}
