namespace SheetGen.Dxf;

/// <summary>Writes the sections HEADER and CLASSES.</summary>
internal static class HeaderSection
{
    internal static void Write(WriteJob job)
    {
        var (header, o) = (job.Document.Header, job.Out);
        var paper = job.Plan.Sheets[0].Sheet!;
        job.Begin("HEADER");
        Variable("$ACADVER", () => o.Coded(1, job.Version.ToString()));
        Variable("$DWGCODEPAGE", () => o.Coded(3, "ANSI_1252"));
        Variable("$HANDSEED", () => o.Handle(5, job.Plan.Seed));
        Variable("$MEASUREMENT", () => o.Integer(70, (int)header.Measurement));
        Variable("$INSUNITS", () => o.Integer(70, (int)header.Units));
        Variable("$INSBASE", () => o.Point(10, DxfPoint.Origin));
        Variable("$EXTMIN", () => o.Point(10, job.Extents.Min));
        Variable("$EXTMAX", () => o.Point(10, job.Extents.Max));
        Variable("$LIMMIN", () => o.Point2(10, job.Extents.Min));
        Variable("$LIMMAX", () => o.Point2(10, job.Extents.Max));
        Variable("$PEXTMIN", () => o.Point(10, DxfPoint.Origin));
        Variable("$PEXTMAX", () => o.Point(10, new(paper.Width, paper.Height)));
        Variable("$PLIMMIN", () => o.Point2(10, DxfPoint.Origin));
        // Other programs take a layout's own limits; LibreCAD takes these as its page, in the unit of the drawing.
        Variable("$PLIMMAX", () => o.Point2(10, new DxfPoint(paper.PaperWidth, paper.PaperHeight) * (1 / MillimetresPer(header.Units))));
        Variable("$LTSCALE", () => o.Real(40, header.LinetypeScale));
        Variable("$PSLTSCALE", () => o.Flag(70, header.PaperSpaceLinetypeScale));
        // The file opens on its first sheet; without sheets of its own in model space.
        Variable("$TILEMODE", () => o.Flag(70, job.Document.Layouts.Count == 0));
        Variable("$LUNITS", () => o.Integer(70, 2));
        Variable("$LUPREC", () => o.Integer(70, header.LinearPrecision));
        Variable("$CLAYER", () => o.Text(8, header.Layer));
        Variable("$TEXTSTYLE", () => o.Text(7, header.TextStyle));
        Variable("$DIMSTYLE", () => o.Text(2, header.DimStyle));
        foreach (var variable in DimVariable.Of(job.Document.DimStyles[header.DimStyle]))
            Variable("$" + variable.Name, () => variable.WriteHeader(o));
        job.End();

        job.Begin("CLASSES");
        if (!job.IsModern)
            LayoutClass(o);
        if (job.Plan.HasMasks)
        {
            MaskClass(o, "WIPEOUT", "AcDbWipeout", 127, true);
            MaskClass(o, "WIPEOUTVARIABLES", "AcDbWipeoutVariables", 0, false);
        }
        job.End();

        void Variable(string name, Action value)
        {
            o.Coded(9, name);
            value();
        }
    }

    private static void LayoutClass(GroupWriter o)
    {
        o.Coded(0, "CLASS");
        o.Coded(1, "LAYOUT");
        o.Coded(2, "AcDbLayout");
        o.Coded(3, "ObjectDBX Classes");
        o.Integer(90, 0);
        o.Integer(280, 0);
        o.Integer(281, 0);
    }

    private static void MaskClass(GroupWriter o, string record, string name, int flags, bool isEntity)
    {
        o.Coded(0, "CLASS");
        o.Coded(1, record);
        o.Coded(2, name);
        o.Coded(3, "WipeOut");
        o.Integer(90, flags);
        o.Integer(280, 0);
        o.Flag(281, isEntity);
    }

    private static double MillimetresPer(DxfUnits unit) => unit switch
    {
        DxfUnits.Inch => 25.4,
        DxfUnits.Foot or DxfUnits.UsSurveyFoot => 304.8,
        DxfUnits.Centimetre => 10,
        DxfUnits.Metre => 1000,
        _ => 1,
    };
}
