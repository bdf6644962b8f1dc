using System.Globalization;
using System.Text;

namespace SheetGen.Tests.Inputs;

/// <summary>
/// The worked alignment of the FHWA Bridge Geometry Manual, FHWA-HIF-22-034 (April 2022), as LandXML written from its points of
/// intersection by plain trigonometry. X is easting, Y northing, in feet.
/// </summary>
internal static class FhwaAlignment
{
    private static readonly (double X, double Y, double Radius)[] Points =
        [(500, 2500, 0), (3340, 660, 1000), (4340, 5000, 1250), (7600, 4560, 950), (8480, 2010, 0)];

    /// <summary>Lengths of the pieces (p. 212).</summary>
    public static double[] PublishedLengths { get; } =
        [1956.785654, 1919.222667, 1886.905454, 1848.115835, 1564.635765, 1049.119737, 2112.285084];

    /// <summary>Station, offset to the right, X and Y (examples 5.1, 5.2, 5.3, 5.7 and 5.8).</summary>
    public static (double Station, double Right, double X, double Y)[] PublishedPoints { get; } =
    [
        (11000, 0, 1339.2529, 1956.2587), (14500, 0, 3800.5519, 2658.7954), (14500, -20, 3781.0626, 2663.2860),
        (14500, 20, 3820.0412, 2654.3048), (13000, 0, 3137.3723, 1382.9424), (13000, 10, 3141.8862, 1374.0192),
    ];

    /// <summary>Distance from the start of the curve at 1200 and elevation (table 3.2).</summary>
    public static (double FromStart, double Elevation)[] PublishedCurve { get; } =
    [
        (0, 121.00), (160, 123.58), (320, 125.72), (480, 127.42), (640, 128.68), (800, 129.50), (960, 129.88), (1120, 129.82), (1280, 129.32), (1440, 128.38), (1600, 127.00),
    ];

    /// <summary>Station, X, Y, elevation and grade (tables 6.2 and 6.5).</summary>
    public static (double Station, double X, double Y, double Elevation, double Grade)[] PublishedGrades { get; } =
    [
        (11070, 1398.00, 1918.20, 118.73, 0.0175), (11200, 1507.10, 1847.51, 121.00, 0.0175), (11330, 1616.21, 1776.82, 123.13, 0.0153),
        (11460, 1725.31, 1706.14, 124.97, 0.0130), (11590, 1834.41, 1635.45, 126.52, 0.0108), (11720, 1943.51, 1564.76, 127.78, 0.0086),
        (11850, 2052.62, 1494.08, 128.74, 0.0063),
    ];

    public const string Profile = """
              <Profile><ProfAlign name="FG">
                <PVI>10000 100</PVI><ParaCurve length="1600">12000 135</ParaCurve><ParaCurve length="1200">15000 105</ParaCurve>
                <ParaCurve length="2000">17400 153</ParaCurve><ParaCurve length="800">19800 105</ParaCurve><PVI>22800 90</PVI>
              </ProfAlign></Profile>
        """;

    /// <param name="version">LandXML version.</param>
    /// <param name="units">The element inside Units.</param>
    /// <param name="factor">File units in a foot.</param>
    /// <param name="more">Further children of the alignment.</param>
    public static string LandXml(string version = "1.2", string units = "<Imperial linearUnit=\"foot\"/>", double factor = 1, string more = Profile)
    {
        var text = new StringBuilder().Append(CultureInfo.InvariantCulture, $"""
            <?xml version="1.0" encoding="utf-8"?>
            <LandXML xmlns="http://www.landxml.org/schema/LandXML-{version}" version="{version}">
              <Units>{units}</Units>
              <Alignments><Alignment name="Ramp" staStart="{10000 * factor}">
                <CoordGeom>

            """);
        (double X, double Y) at = (Points[0].X, Points[0].Y);
        for (int i = 1; i < Points.Length; i++)
        {
            (double x, double y, double radius) = Points[i];
            double into = Math.Atan2(y - Points[i - 1].Y, x - Points[i - 1].X);
            if (radius == 0)
            {
                Line(at, (x, y));
                break;
            }
            double out_ = Math.Atan2(Points[i + 1].Y - y, Points[i + 1].X - x);
            double turn = Math.IEEERemainder(out_ - into, 2 * Math.PI), tangent = radius * Math.Tan(Math.Abs(turn) / 2);
            (double X, double Y) start = (x - tangent * Math.Cos(into), y - tangent * Math.Sin(into)), end = (x + tangent * Math.Cos(out_), y + tangent * Math.Sin(out_));
            double side = Math.Sign(turn);
            (double X, double Y) center = (start.X - side * radius * Math.Sin(into), start.Y + side * radius * Math.Cos(into));
            Line(at, start);
            text.Append(CultureInfo.InvariantCulture, $"<Curve rot=\"{(turn > 0 ? "ccw" : "cw")}\" radius=\"{radius * factor:R}\">{Point("Start", start)}{Point("Center", center)}{Point("End", end)}</Curve>\n");
            at = end;
        }
        return text.Append(CultureInfo.InvariantCulture, $"    </CoordGeom>\n{more}\n  </Alignment></Alignments></LandXML>").ToString();

        void Line((double X, double Y) a, (double X, double Y) b) => text.Append(CultureInfo.InvariantCulture, $"<Line>{Point("Start", a)}{Point("End", b)}</Line>\n");
        string Point(string name, (double X, double Y) p) => string.Create(CultureInfo.InvariantCulture, $"<{name}>{p.Y * factor:R} {p.X * factor:R}</{name}>");
    }
}
