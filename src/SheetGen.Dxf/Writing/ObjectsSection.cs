namespace SheetGen.Dxf;

/// <summary>Writes the section OBJECTS: the dictionaries and the layouts.</summary>
internal static class ObjectsSection
{
    // Plot flags: standard scale, plot styles, lineweights, viewports first; and that the layout is model space.
    private const int PlotFlags = 16 + 32 + 128 + 512, ModelFlag = 1024;

    internal static void Write(WriteJob job)
    {
        var plan = job.Plan;
        job.Begin("OBJECTS");
        Dictionary(job, plan.Root, 0,
        [
            ("ACAD_GROUP", plan.Groups), ("ACAD_LAYOUT", plan.Layouts),
            ("ACAD_MLINESTYLE", plan.MlineStyles), ("ACAD_PLOTSETTINGS", plan.PlotSettings),
            .. plan.HasMasks ? [("ACAD_WIPEOUT_VARS", plan.MaskSettings)] : Array.Empty<(string, int)>(),
        ]);
        Dictionary(job, plan.Groups, plan.Root, []);
        Dictionary(job, plan.Layouts, plan.Root, [("Model", plan.Model.LayoutObject), .. plan.Sheets.Select(s => (s.Sheet!.Name, s.LayoutObject))]);
        Dictionary(job, plan.MlineStyles, plan.Root, [("Standard", plan.MlineStyle)]);
        Dictionary(job, plan.PlotSettings, plan.Root, []);
        MlineStyle(job);
        if (plan.HasMasks)
        {
            // Masks without frames.
            Begin(job, "WIPEOUTVARIABLES", plan.MaskSettings, plan.Root);
            job.Out.Coded(100, "AcDbWipeoutVariables");
            job.Out.Integer(70, 0);
        }
        var order = 0;
        foreach (var space in plan.Spaces)
            Layout(job, space, order++);
        job.End();
    }

    private static void Begin(WriteJob job, string kind, int handle, int owner)
    {
        job.Out.Coded(0, kind);
        job.Out.Handle(5, handle);
        if (owner != 0)
        {
            job.Out.Coded(102, "{ACAD_REACTORS");
            job.Out.Handle(330, owner);
            job.Out.Coded(102, "}");
        }
        job.Out.Handle(330, owner);
    }

    private static void Dictionary(WriteJob job, int handle, int owner, IEnumerable<(string Key, int Value)> entries)
    {
        Begin(job, "DICTIONARY", handle, owner);
        job.Out.Coded(100, "AcDbDictionary");
        job.Out.Integer(281, 1);
        foreach (var (key, value) in entries)
        {
            job.Out.Text(3, key);
            job.Out.Handle(350, value);
        }
    }

    private static void MlineStyle(WriteJob job)
    {
        var o = job.Out;
        Begin(job, "MLINESTYLE", job.Plan.MlineStyle, job.Plan.MlineStyles);
        o.Coded(100, "AcDbMlineStyle");
        o.Coded(2, "STANDARD");
        o.Integer(70, 0);
        o.Coded(3, "");
        o.Integer(62, 256);
        o.Real(51, 90);
        o.Real(52, 90);
        o.Integer(71, 2);
        foreach (var offset in new[] { 0.5, -0.5 })
        {
            o.Real(49, offset);
            o.Integer(62, 256);
            o.Coded(6, "BYLAYER");
        }
    }

    private static void Layout(WriteJob job, PlannedSpace space, int order)
    {
        var o = job.Out;
        Begin(job, "LAYOUT", space.LayoutObject, job.Plan.Layouts);
        PlotSettings(job, space);
        var extents = space.Sheet is { } sheet ? new DxfExtents(DxfPoint.Origin, new(sheet.Width, sheet.Height)) : job.Extents;
        o.Coded(100, "AcDbLayout");
        o.Text(1, space.Sheet?.Name ?? "Model");
        o.Integer(70, 1);
        o.Integer(71, order);
        o.Point2(10, extents.Min);
        o.Point2(11, extents.Max);
        o.Point(12, DxfPoint.Origin);
        o.Point(14, extents.Min);
        o.Point(15, extents.Max);
        o.Real(146, 0);
        o.Vector(13, 0, 0, 0);
        o.Vector(16, 1, 0, 0);
        o.Vector(17, 0, 1, 0);
        o.Integer(76, 0);
        o.Handle(330, space.Record);
        if (space.Sheet is not null)
            o.Handle(331, space.SheetViewport);
    }

    private static void PlotSettings(WriteJob job, PlannedSpace space)
    {
        var o = job.Out;
        var paper = space.Sheet ?? job.Plan.Sheets[0].Sheet!;
        o.Coded(100, "AcDbPlotSettings");
        o.Coded(1, "");
        o.Text(2, paper.Plotter);
        o.Text(4, paper.PaperName);
        o.Coded(6, "");
        for (var margin = 40; margin <= 43; margin++)
            o.Real(margin, paper.Margin);
        o.Real(44, paper.PaperWidth);
        o.Real(45, paper.PaperHeight);
        // The plot begins at the corner of what the plotter reaches; moved back, it begins at the paper's.
        o.Real(46, -paper.Margin);
        o.Real(47, -paper.Margin);
        o.Real(48, 0);
        o.Real(49, 0);
        o.Real(140, 0);
        o.Real(141, 0);
        o.Real(142, 1);
        o.Real(143, 1);
        o.Integer(70, PlotFlags + (space.Sheet is null ? ModelFlag : 0));
        o.Integer(72, (int)paper.Unit);
        o.Integer(73, 0);
        o.Integer(74, space.Sheet is null ? 0 : 5);
        o.Text(7, paper.PlotStyleTable);
        o.Integer(75, 16);
        o.Real(147, 1);
        o.Real(148, 0);
        o.Real(149, 0);
    }
}
