namespace SheetGen.Dxf;

/// <summary>Reads the layouts and what stands on them.</summary>
internal sealed class LayoutReader(RawFile raw, TableReader tables, ReadLog log)
{
    private const int FirstSheetId = 1;
    private const string ActiveSpace = "*Paper_Space";

    /// <summary>The entities of the section ENTITIES that belong to model space or to the active layout.</summary>
    internal static IEnumerable<Record> Part(List<Record> entities, bool paper)
    {
        var onPaper = false;
        foreach (var record in entities)
        {
            // Vertices and attributes go with what they are part of.
            if (record.Kind is not ("VERTEX" or "ATTRIB" or "SEQEND"))
                onPaper = record.Integer(67) == 1;
            if (onPaper == paper)
                yield return record;
        }
    }

    internal void Read(
        DxfDocument document,
        Dictionary<string, List<Record>> spaces,
        Func<IReadOnlyList<Record>, SpaceContent> readSpace,
        List<(List<DxfEntity> Target, SpaceContent Content)> read)
    {
        List<Record> active = [.. spaces.GetValueOrDefault(ActiveSpace, []), .. Part(raw.Entities, paper: true)];
        foreach (var (layout, space) in Layouts(active.Count > 0))
        {
            if (document.Layouts.Contains(layout.Name))
                continue;
            document.Layouts.Add(layout);
            var records = space.Equals(ActiveSpace, StringComparison.OrdinalIgnoreCase) ? active : spaces.GetValueOrDefault(space, []);
            var content = readSpace(records);
            // The viewport that stands for the sheet itself has id 1; where no id tells, it is the first.
            var own = content.Viewports.Find(v => v.Id == FirstSheetId) ?? content.Viewports.FirstOrDefault();
            layout.Viewports.AddRange(content.Viewports.Where(v => v != own && IsUsable(v)).Select(v => v.Viewport));
            read.Add((layout.Entities, content));
        }
    }

    private bool IsUsable(ReadViewport viewport)
    {
        var usable = viewport.Viewport is { Width: > 0, Height: > 0, ViewHeight: > 0 };
        if (!usable)
            log.Warn(viewport.Record, "VIEWPORT without size is left out");
        return usable;
    }

    private IEnumerable<(DxfLayout Layout, string Space)> Layouts(bool paperIsUsed)
    {
        var layouts = raw.Objects.Where(r => r.Kind == "LAYOUT").Select(Layout).OfType<(DxfLayout Layout, string Space, int Order)>().ToList();
        if (layouts.Count == 0 && paperIsUsed)
        {
            log.Warn(0, "the file has paper space but no layout; paper of 297 x 210 mm is taken", DxfProblemKind.Paper);
            return [(new DxfLayout("Layout1", 297, 210), ActiveSpace)];
        }
        return layouts.OrderBy(l => l.Order).Select(l => (l.Layout, l.Space));
    }

    private (DxfLayout Layout, string Space, int Order)? Layout(Record record)
    {
        // Group codes repeat: before the marker they are plot settings, after it the layout's own.
        var marker = record.Groups.FindIndex(g => g.Code == 100 && g.Value.Trim() == "AcDbLayout");
        if (marker < 0)
            return null;
        var plot = new Record(new(0, record.Kind, record.Line), record.Groups[..marker], log);
        var own = new Record(new(0, record.Kind, record.Line), record.Groups[marker..], log);
        var space = tables.NameOf("BLOCK_RECORD", own.Raw(330) ?? "")?.Replace('$', '*');
        var name = own.Name(1);
        if (space is null || name.Length == 0 || space.Equals("*Model_Space", StringComparison.OrdinalIgnoreCase))
            return null;
        var (width, height) = (plot.Real(44), plot.Real(45));
        // The paper turned by a quarter lies the other way.
        if (plot.Integer(73) is 1 or 3)
            (width, height) = (height, width);
        var layout = new DxfLayout(name, width > 0 ? width : 297, height > 0 ? height : 210)
        {
            Unit = plot.Integer(72) == 0 ? DxfPaperUnit.Inch : DxfPaperUnit.Millimetre,
            PaperName = plot.Text(4),
            Plotter = plot.Name(2, "none_device"),
            PlotStyleTable = plot.Text(7),
        };
        return (layout, space, own.Integer(71));
    }
}
