using SheetGen.Dxf;
using Xunit;

namespace SheetGen.Tests.Dxf;

/// <summary>A document that uses everything the model has, and helpers to write and read.</summary>
internal static class SampleDocument
{
    internal static DxfDocument Everything()
    {
        var doc = new DxfDocument
        {
            Header = new()
            {
                Units = DxfUnits.Foot,
                Measurement = DxfMeasurement.Imperial,
                Extents = new(new(-5, -15), new(112, 40)),
                LinetypeScale = 0.5,
                PaperSpaceLinetypeScale = true,
                LinearPrecision = 3,
                Layer = "A-LINE",
                TextStyle = "Notes",
                DimStyle = "Feet",
            },
        };
        doc.Linetypes.Add(new("Dashed", "Dashed __ __ __", [0.5, -0.25]));
        doc.Linetypes.Add(new("Center", "Center ____ _ ____", [1.25, -0.25, 0.25, -0.25]));
        doc.Layers.Add(new("A-LINE", 3) { LineWeight = 35 });
        doc.Layers.Add(new("A-WIDE", 30) { Linetype = "Dashed", Locked = true });
        doc.Layers.Add(new("A-VIEW", 8) { Plot = false });
        doc.Layers.Add(new("A-OFF", 1) { Off = true, Frozen = true, Linetype = "Center" });
        doc.TextStyles.Add(new("Notes", "arial.ttf") { WidthFactor = 0.9, ObliqueAngle = 12 });
        doc.DimStyles.Add(new("Feet")
        {
            Scale = 10,
            TextHeight = 0.1,
            ArrowSize = 0.1,
            ExtensionOffset = 0.06,
            ExtensionBeyond = 0.1,
            TextGap = 0.05,
            TextStyle = "Notes",
            Format = DxfLinearFormat.Architectural,
            Precision = 4,
            MeasureFactor = 12,
        });
        doc.DimStyles.Add(new("Ticks") { TickSize = 0.1, TextAbove = false, Affix = "<>'", TrimZeros = true, TextHeight = 1, Precision = 3 });
        doc.AppIds.Add(new("SAMPLE"));
        var mark = Mark();
        doc.Blocks.Add(mark);
        doc.Blocks.Add(Nested());
        Model(doc, mark);
        Sheets(doc, mark);
        return doc;
    }

    internal static byte[] Write(DxfDocument document, DxfVersion version = DxfVersion.AC1015)
    {
        using var stream = new MemoryStream();
        DxfWriter.Write(document, stream, version);
        return stream.ToArray();
    }

    /// <summary>Reads what must be readable without a warning.</summary>
    internal static DxfDocument Read(byte[] bytes)
    {
        var result = DxfReader.Read(bytes);
        Assert.True(result.Succeeded, result.Error?.ToString());
        Assert.Empty(result.Warnings);
        return result.Document;
    }

    internal static DxfDocument WithEntities(params DxfEntity[] entities)
    {
        var doc = new DxfDocument();
        doc.Model.AddRange(entities);
        return doc;
    }

    private static DxfBlock Mark() => new("MARK")
    {
        BasePoint = new(1, 2),
        Entities =
        {
            new DxfCircle("0", new(1, 2), 0.5),
            new DxfAttributeDefinition("ID", "Mark?", new("0", new(1.5, 2.25), 0.5, "none") { Style = "Notes" }),
            new DxfAttributeDefinition("LENGTH", "Length?", new("A-LINE", new(1.5, 1.5), 0.5, "20")
            {
                Align = DxfTextAlign.Center,
                VerticalAlign = DxfTextVerticalAlign.Middle,
            })
            { Invisible = true },
        },
    };

    private static DxfBlock Nested() => new("NESTED") { Entities = { new DxfInsert("0", "MARK", new(3, 3)) } };

    private static void Model(DxfDocument doc, DxfBlock mark)
    {
        const string Line = "A-LINE";
        DxfXData data = new("SAMPLE",
        [
            new DxfXValue.Text("Grüße ^ \\U+0041 {x}"),
            new DxfXValue.List([new DxfXValue.Real(0.1), new DxfXValue.Integer(-7), new DxfXValue.Integer(70_000)]),
            new DxfXValue.Layer("A-VIEW"),
            new DxfXValue.Point(new(1.5, -2.5)),
        ]);
        doc.Model.AddRange(
        [
            new DxfLine(Line, new(0, 0), new(100, -4.25)) { XData = [data] },
            new DxfPolyline(Line, [new DxfPoint(0, 0), new DxfPoint(100, 0), new(new(100, 20), 0.5), new DxfPoint(0, 20)], true),
            new DxfPolyline("A-WIDE", [new(new(0, 0), -1), new DxfPoint(5, 0)]) { Width = 0.25 },
            new DxfCircle(Line, new(50, 10), 3),
            new DxfArc(Line, new(50, 10), 4, 0, 135),
            new DxfEllipse(Line, new(20, 10), new(4, 3), 0.4),
            new DxfEllipse(Line, new(20, 10), new(0, 6), 0.5) { StartParameter = 30, EndParameter = 145 },
            new DxfPointEntity(Line, new(7, 8)),
            new DxfSolid(Line, new(0, 0), new(1, 0), new(1, 1), new(0, 1)),
            new DxfText(Line, new(2, 3), 1, "5'-0\" O.C. ± 100% %% ^ \\U+0041 Ω 😀") { Style = "Notes" },
            new DxfText(Line, new(2, 6), 1, "right top")
            {
                Align = DxfTextAlign.Right,
                VerticalAlign = DxfTextVerticalAlign.Top,
                Rotation = 30,
                WidthFactor = 0.8,
                ObliqueAngle = 10,
            },
            new DxfMText(Line, new(2, 36), 1, "first {line}\nC:\\new\\Path ²\n" + string.Concat(Enumerable.Repeat("long\\text – ", 60)))
            {
                Width = 40,
                Attachment = DxfAttachment.MiddleRight,
                Style = "Notes",
                Rotation = 45,
                LineSpacing = 1.5,
            },
            DxfInsert.Of(Line, mark, new(10, 10), new Dictionary<string, string> { ["ID"] = "N-1 é" }, 2, 90) with { XData = [data] },
            new DxfInsert("0", "NESTED", new(30, 5)) { ScaleX = -1, ScaleY = 2, Rotation = 15 },
            new DxfHatch(Line, [[new DxfPoint(0, -4), new DxfPoint(10, -4), new DxfPoint(10, -8), new DxfPoint(0, -8)], [new(new(4, -6), 1), new(new(6, -6), 1)]]),
            new DxfHatch(Line, [[new DxfPoint(20, -4), new DxfPoint(30, -4), new DxfPoint(30, -8)]]) { Pattern = DxfHatchPattern.Parallel(0, 0.5) },
            new DxfHatch(Line, [[new DxfPoint(40, -4), new DxfPoint(50, -4), new DxfPoint(50, -8)]])
            {
                Pattern = new("DOTTED", [new(30, new(1, 1), new(0.5, 1), [0.5, -0.25, 0, -0.25]), new(120, new(0, 0), new(2, 0), [])])
                {
                    Scale = 2,
                    Angle = 15,
                },
            },
            new DxfDimension(Line, DxfDimensionKind.Rotated, new(0, 0), new(100, 1), new(100, -11)) { Style = "Feet", XData = [data] },
            new DxfDimension(Line, DxfDimensionKind.Rotated, new(0, 0), new(3, 20), new(-5, 20), 90) { Style = "Ticks", TextPoint = new(-7, 9) },
            new DxfDimension(Line, DxfDimensionKind.Aligned, new(0, 0), new(30, 40), new(26, 43)),
            new DxfLeader(Line, [new(50, 13), new(56, 33), new(58, 33)])
            {
                Style = "Feet",
                Note = new(Line, new(59, 33), 1, "NOTE") { Attachment = DxfAttachment.MiddleLeft },
            },
            new DxfLeader(Line, [new(1, 1), new(2, 2)]) { Arrow = false },
        ]);
    }

    private static void Sheets(DxfDocument doc, DxfBlock mark)
    {
        var first = new DxfLayout("S-1", 863.6, 558.8)
        {
            Unit = DxfPaperUnit.Inch,
            PaperName = "ARCH_D_(34.00_x_22.00_Inches)",
            Plotter = "DWG To PDF.pc3",
            PlotStyleTable = "monochrome.ctb",
        };
        first.Viewports.Add(DxfViewport.AtScale("A-VIEW", new(16, 12), 28, 16, new(50, 10), 10) with { FrozenLayers = ["A-OFF", "A-LINE"] });
        first.Viewports.Add(DxfViewport.AtScale("A-VIEW", new(30, 3), 4, 4, new(0, 0), 5) with { Locked = false });
        first.Entities.Add(DxfInsert.Of("A-LINE", mark, new(30, 1), new Dictionary<string, string> { ["ID"] = "S-1" }));
        var second = new DxfLayout("S-2 Schnitt ä", 841, 594);
        second.Viewports.Add(DxfViewport.AtScale("A-VIEW", new(400, 300), 300, 200, new(10, 0), 0.5) with { Twist = 90 });
        second.Entities.Add(new DxfText("0", new(10, 10), 5, "second"));
        second.Entities.Add(new DxfDimension("A-LINE", DxfDimensionKind.Rotated, new(0, 0), new(50, 0), new(50, 20)));
        doc.Layouts.Add(first);
        doc.Layouts.Add(second);
        doc.Layouts.Add(new("S-3", 297, 210));
    }
}
