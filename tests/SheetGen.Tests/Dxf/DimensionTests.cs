using FsCheck;
using FsCheck.Xunit;
using SheetGen.Dxf;
using Xunit;

namespace SheetGen.Tests.Dxf;

public class DimensionTests
{
    [Theory]
    [InlineData(12.5, DxfLinearFormat.Decimal, 2, 1, "", "12.50")]
    [InlineData(12.345, DxfLinearFormat.Decimal, 2, 1, "<>'", "12.35'")]
    [InlineData(12.3, DxfLinearFormat.Decimal, 0, 1, " m", "12 m")]
    [InlineData(1.005, DxfLinearFormat.Decimal, 2, 1, "", "1.01")]
    [InlineData(100, DxfLinearFormat.Architectural, 4, 12, "", "100'-0\"")]
    [InlineData(5.5, DxfLinearFormat.Architectural, 4, 12, "<> TYP.", "5'-6\" TYP.")]
    [InlineData(0.5104166666666666, DxfLinearFormat.Architectural, 4, 12, "", "0'-6 1/8\"")]
    [InlineData(71.99, DxfLinearFormat.Architectural, 4, 1, "", "6'-0\"")]
    [InlineData(71.99, DxfLinearFormat.Engineering, 1, 1, "", "6'-0.0\"")]
    [InlineData(30.26, DxfLinearFormat.Engineering, 1, 1, "", "2'-6.3\"")]
    public void Measured_length_is_written_in_the_style(double length, DxfLinearFormat format, int precision, double factor, string affix, string text)
    {
        var style = new DxfDimStyle("D") { Format = format, Precision = precision, MeasureFactor = factor, Affix = affix };

        Assert.Equal(text, ShownText(DxfDimension.Rotated("0", new(1, 2), new(1 + length, 7), new(0, 9), 0), style));
    }

    [Fact]
    public void Zeros_may_be_trimmed()
    {
        var style = new DxfDimStyle("D") { Precision = 3, TrimZeros = true };

        Assert.Equal("2.5", ShownText(DxfDimension.Aligned("0", new(0, 0), new(1.5, 2), 1), style));
        Assert.Equal("20", ShownText(DxfDimension.Aligned("0", new(0, 0), new(20, 0), 1), style));
    }

    [Property(MaxTest = 100)]
    public void Dimension_line_runs_along_the_direction_and_is_as_long_as_measured(short x, short y, short angle, short offset)
    {
        var (from, to) = (new DxfPoint(3, 4), new DxfPoint(x / 16.0, y / 16.0));
        var turned = DxfDimension.Rotated("0", from, to, new(offset / 8.0, 1), angle % 180);
        var all = (to - from).Length > 0.1 ? [turned, DxfDimension.Aligned("0", from, to, offset / 8.0)] : new[] { turned };

        foreach (var dimension in all)
        {
            var direction = dimension.Kind == DxfDimensionKind.Aligned
                ? (to - from) * (1 / (to - from).Length)
                : new DxfPoint(1, 0).Rotated(dimension.Angle);
            var dot = ((to - from).X * direction.X) + ((to - from).Y * direction.Y);
            Assert.Equal(Math.Abs(dot), dimension.Measurement, 9);
            // The end of the dimension line stands square to the second point.
            var arm = dimension.LinePoint - to;
            Assert.Equal(0, (arm.X * direction.X) + (arm.Y * direction.Y), 9);
        }
    }

    [Fact]
    public void Picture_shows_what_the_dimension_says()
    {
        var style = new DxfDimStyle("D") { Scale = 2, TextHeight = 1, ArrowSize = 1, ExtensionOffset = 0.5, ExtensionBeyond = 1, TextGap = 0.25 };
        var file = File(DxfDimension.Rotated("L", new(0, 0), new(20, 5), new(0, 10), 0), style);

        Assert.Equal(
            [
                new DxfLine("L", new(0, 1), new(0, 12)),
                new DxfLine("L", new(20, 6), new(20, 12)),
                new DxfLine("L", new(0, 10), new(20, 10)),
            ],
            file.OfType<DxfLine>());
        var tips = file.OfType<DxfSolid>().ToList();
        Assert.Equal([new(0, 10), new DxfPoint(20, 10)], tips.Select(t => t.Third));
        Assert.Equal([2.0, 18.0], tips.Select(t => (t.First.X + t.Second.X) / 2));
        Assert.All(tips, t => Assert.Equal(10, (t.First.Y + t.Second.Y) / 2, 9));
        var text = Assert.Single(file.OfType<DxfMText>());
        Assert.Equal(("20.00", new DxfPoint(10, 11.5), 2.0, 0.0), (text.Value, text.Position, text.Height, text.Rotation));
        Assert.All(file.OfType<DxfPointEntity>(), p => Assert.Equal("Defpoints", p.Layer));
        Assert.Equal(3, file.OfType<DxfPointEntity>().Count());
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(90, 90)]
    [InlineData(-90, 90)]
    [InlineData(135, -45)]
    [InlineData(180, 0)]
    [InlineData(-135, 45)]
    public void Text_reads_from_below_or_from_the_right(double direction, double rotation)
    {
        var to = new DxfPoint(20, 0).Rotated(direction);
        var text = File(DxfDimension.Aligned("L", new(0, 0), to, 3), new("D")).OfType<DxfMText>().Single();

        Assert.Equal(rotation, text.Rotation, 6);
    }

    [Fact]
    public void Short_dimension_has_its_arrows_outside()
    {
        var file = File(DxfDimension.Rotated("L", new(0, 0), new(1, 0), new(0, 5), 0), new("D") { ArrowSize = 1 });

        Assert.Equal([-1, 2], file.OfType<DxfSolid>().Select(s => (s.First.X + s.Second.X) / 2));
    }

    [Fact]
    public void Text_over_the_measured_length_is_never_written()
    {
        var lines = System.Text.Encoding.ASCII.GetString(SampleDocument.Write(SampleDocument.Everything())).Split("\r\n");
        var overrides = Enumerable.Range(0, lines.Length).Where(i => lines[i] == "DIMENSION")
            .Select(i => Array.FindIndex(lines, i, l => l == "  1"))
            .Select(i => lines[i + 1])
            .ToList();

        Assert.Equal(4, overrides.Count);
        Assert.All(overrides, Assert.Empty);
    }

    private static string ShownText(DxfDimension dimension, DxfDimStyle style) => File(dimension, style).OfType<DxfMText>().Single().Value;

    /// <summary>The entities of the dimension's block, read back as an ordinary block.</summary>
    private static List<DxfEntity> File(DxfDimension dimension, DxfDimStyle style)
    {
        var document = new DxfDocument();
        document.Layers.Add(new("L"));
        document.DimStyles.Add(style);
        document.Model.Add(dimension with { Style = style.Name });
        var text = System.Text.Encoding.ASCII.GetString(SampleDocument.Write(document));
        return SampleDocument.Read(System.Text.Encoding.ASCII.GetBytes(text.Replace("\r\n*D1\r\n", "\r\nPICTURE\r\n"))).Blocks["PICTURE"].Entities;
    }
}
