namespace SheetGen.Dxf;

/// <summary>Writes the section TABLES, all nine of them.</summary>
internal static class TablesSection
{
    /// <summary>Width over height assumed for the window in which the drawing opens.</summary>
    private const double WindowAspect = 2;

    internal static void Write(WriteJob job)
    {
        var document = job.Document;
        job.Begin("TABLES");
        Table(job, "VPORT", 1, () => ActiveView(job));
        Table(job, "LTYPE", document.Linetypes.Count + 3, () =>
        {
            Linetype(job, new("ByBlock", "", []));
            Linetype(job, new("ByLayer", "", []));
            Linetype(job, new(DxfLinetype.Continuous, "Solid line", []));
            foreach (var linetype in document.Linetypes)
                Linetype(job, linetype);
        });
        Table(job, "LAYER", document.Layers.Count, () => Each(document.Layers, l => Layer(job, l)));
        Table(job, "STYLE", document.TextStyles.Count, () => Each(document.TextStyles, s => TextStyle(job, s)));
        Table(job, "VIEW", 0, () => { });
        Table(job, "UCS", 0, () => { });
        Table(job, "APPID", document.AppIds.Count, () => Each(document.AppIds, a => Record(job, "APPID", "AcDbRegAppTableRecord", a.Name)));
        Table(job, "DIMSTYLE", document.DimStyles.Count, () => Each(document.DimStyles, d => DimStyle(job, d)));
        var blocks = document.Blocks.Count + job.Plan.Spaces.Count() + job.Plan.DimensionBlocks.Count();
        Table(job, "BLOCK_RECORD", blocks, () => BlockRecords(job));
        job.End();
    }

    private static void Each<T>(IEnumerable<T> items, Action<T> action)
    {
        foreach (var item in items)
            action(item);
    }

    private static void Table(WriteJob job, string name, int count, Action records)
    {
        var o = job.Out;
        o.Coded(0, "TABLE");
        o.Coded(2, name);
        o.Handle(5, job.Plan["TABLE", name]);
        o.Handle(330, 0);
        o.Coded(100, "AcDbSymbolTable");
        o.Integer(70, count);
        if (name == "DIMSTYLE")
        {
            // Alone among the tables, this one lists its records.
            o.Coded(100, "AcDbDimStyleTable");
            o.Integer(71, count);
            foreach (var style in job.Document.DimStyles)
                o.Handle(340, job.Plan["DIMSTYLE", style.Name]);
        }
        records();
        o.Coded(0, "ENDTAB");
    }

    private static void Record(WriteJob job, string table, string subclass, string name, int flags = 0)
    {
        RecordHead(job, table, subclass, name, job.Plan[table, name]);
        job.Out.Integer(70, flags);
    }

    private static void RecordHead(WriteJob job, string table, string subclass, string name, int handle)
    {
        var o = job.Out;
        o.Coded(0, table);
        o.Handle(table == "DIMSTYLE" ? 105 : 5, handle);
        o.Handle(330, job.Plan["TABLE", table]);
        o.Coded(100, "AcDbSymbolTableRecord");
        o.Coded(100, subclass);
        o.Text(2, name);
    }

    private static void ActiveView(WriteJob job)
    {
        var o = job.Out;
        Record(job, "VPORT", "AcDbViewportTableRecord", "*Active");
        o.Point2(10, DxfPoint.Origin);
        o.Point2(11, new(1, 1));
        o.Point2(12, job.Extents.Center);
        o.Point2(13, DxfPoint.Origin);
        o.Point2(14, new(1, 1));
        o.Point2(15, new(1, 1));
        o.Vector(16, 0, 0, 1);
        o.Vector(17, 0, 0, 0);
        var height = Math.Max(job.Extents.Height, job.Extents.Width / WindowAspect) * 1.1;
        o.Real(40, height > 0 ? height : 1);
        o.Real(41, WindowAspect);
        o.Real(42, 50);
        o.Real(43, 0);
        o.Real(44, 0);
        o.Real(50, 0);
        o.Real(51, 0);
        o.Integer(71, 0);
        o.Integer(72, 100);
        o.Integer(73, 1);
        o.Integer(74, 3);
        for (var code = 75; code <= 78; code++)
            o.Integer(code, 0);
    }

    private static void Linetype(WriteJob job, DxfLinetype linetype)
    {
        var o = job.Out;
        Record(job, "LTYPE", "AcDbLinetypeTableRecord", linetype.Name);
        o.Text(3, linetype.Description);
        o.Integer(72, 'A');
        o.Integer(73, linetype.Pattern.Count);
        o.Real(40, linetype.Pattern.Sum(Math.Abs));
        foreach (var length in linetype.Pattern)
        {
            o.Real(49, length);
            o.Integer(74, 0);
        }
    }

    private static void Layer(WriteJob job, DxfLayer layer)
    {
        var o = job.Out;
        Record(job, "LAYER", "AcDbLayerTableRecord", layer.Name, (layer.Frozen ? 1 : 0) + (layer.Locked ? 4 : 0));
        o.Integer(62, layer.Off ? -layer.Color : layer.Color);
        o.Text(6, layer.Linetype);
        if (!layer.Plot)
            o.Integer(290, 0);
        o.Integer(370, layer.LineWeight);
    }

    private static void TextStyle(WriteJob job, DxfTextStyle style)
    {
        var o = job.Out;
        Record(job, "STYLE", "AcDbTextStyleTableRecord", style.Name);
        o.Real(40, 0);
        o.Real(41, style.WidthFactor);
        o.Real(50, style.ObliqueAngle);
        o.Integer(71, 0);
        o.Real(42, 1);
        o.Text(3, style.FontFile);
        o.Coded(4, "");
    }

    private static void DimStyle(WriteJob job, DxfDimStyle style)
    {
        Record(job, "DIMSTYLE", "AcDbDimStyleTableRecord", style.Name);
        foreach (var variable in DimVariable.Of(style))
            variable.WriteRecord(job.Out);
        job.Out.Handle(340, job.Plan["STYLE", style.TextStyle]);
    }

    private static void BlockRecords(WriteJob job)
    {
        foreach (var space in job.Plan.Spaces)
            BlockRecord(space.Name, space.Record, space.LayoutObject);
        foreach (var block in job.Document.Blocks)
            BlockRecord(block.Name, job.Plan["BLOCK_RECORD", block.Name], 0);
        foreach (var dimension in job.Plan.DimensionBlocks)
            BlockRecord(dimension.BlockName, dimension.Record, 0);

        void BlockRecord(string name, int handle, int layout)
        {
            RecordHead(job, "BLOCK_RECORD", "AcDbBlockTableRecord", name, handle);
            job.Out.Handle(340, layout);
            if (!job.IsModern)
                return;
            job.Out.Integer(70, 0);
            job.Out.Integer(280, 1);
            job.Out.Integer(281, 0);
        }
    }
}
