using System.Globalization;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Set;

/// <summary>How values are written on sheets, in the project's unit and language. The decimal mark is a point in all of them.</summary>
public sealed class Printed(LengthUnit unit, Vector2D origin, Language language)
{
    public LengthUnit Unit { get; } = unit;

    private string Mark => language.Say(Lengths.IsFoot(Unit) ? Phrase.FootMark : Phrase.MetreMark);

    public string UnitName => language.Say(Unit switch
    {
        LengthUnit.Foot => Phrase.UnitFoot,
        LengthUnit.SurveyFoot => Phrase.UnitSurveyFoot,
        _ => Phrase.UnitMetre,
    });

    /// <summary>The printed station of a place on a layout line.</summary>
    public string Station(LayoutLine line, double along) => line.StationText(along, Unit);

    public string Station(Wall wall, double along) => Station(wall.LayoutLine, along);

    public string Station(Nail nail) => nail.Wall.TextOf(nail.Station, Unit);

    /// <summary>The printed station where a finding begins; empty where it has none.</summary>
    public string Station(Finding finding, WallProject project)
    {
        if (finding.Station is not { } station)
            return "";
        LayoutLine line = finding.Wall?.LayoutLine ?? project.LayoutLines[0];
        return Station(line, line.AlongOf(station));
    }

    /// <summary>A station without decimals where it has none.</summary>
    public string ShortStation(LayoutLine line, double along)
    {
        double printed = line.Stationing.Printed(along).Number;
        return Math.Abs(printed - Math.Round(printed)) < 1e-6 ? line.Stationing.Text(along, Unit, 0) : Station(line, along);
    }

    public string ShortStation(Wall wall, double along) => ShortStation(wall.LayoutLine, along);

    public string Elevation(double elevation) => Fixed(elevation, Lengths.Decimals(Unit));

    /// <summary>A length with all its decimals and unit mark.</summary>
    public string Distance(double length) => Fixed(length, Lengths.Decimals(Unit)) + Mark;

    /// <summary>A length without idle zeros.</summary>
    public string Short(double length) => Number(length, Lengths.Decimals(Unit)) + Mark;

    /// <summary>A small length: inches or millimetres.</summary>
    public string Small(double length) => Lengths.IsFoot(Unit)
        ? Number(Lengths.ToInches(length, Unit), 3) + language.Say(Phrase.InchMark)
        : Number(length * 1000, 1) + language.Say(Phrase.MillimetreMark);

    public string Angle(double degrees) => Number(degrees, 2) + "°";

    public string Coordinate(double value) => Fixed(value, 4);

    public string Northing(Vector2D point) => Coordinate(point.N + origin.N);

    public string Easting(Vector2D point) => Coordinate(point.E + origin.E);

    /// <summary>A direction as a bearing, such as N 45°00'00" E.</summary>
    public string Bearing(double azimuth)
    {
        double degrees = Angles.ToDegrees(Angles.NormalizeAzimuth(azimuth));
        bool south = degrees > 90 && degrees < 270;
        bool west = degrees > 180;
        double acute = degrees <= 90 ? degrees : degrees <= 180 ? 180 - degrees : degrees <= 270 ? degrees - 180 : 360 - degrees;
        return $"{language.Say(south ? Phrase.South : Phrase.North)} {Sexagesimal(acute)} {language.Say(west ? Phrase.West : Phrase.East)}";
    }

    /// <summary>Degrees, minutes and seconds.</summary>
    public string Sexagesimal(double degrees)
    {
        long seconds = (long)Math.Round(Math.Abs(degrees) * 3600, MidpointRounding.AwayFromZero);
        return string.Create(CultureInfo.InvariantCulture, $"{seconds / 3600}°{seconds / 60 % 60:00}'{seconds % 60:00}\"");
    }

    public string Percent(double share) => language.Say(Phrase.Percent, Number(share * 100, 2));

    public static string Number(double value, int decimals)
    {
        string text = Math.Round(FiniteNumber.Of(value), decimals, MidpointRounding.AwayFromZero)
            .ToString("0." + new string('#', decimals), CultureInfo.InvariantCulture);
        return text == "-0" ? "0" : text;
    }

    public static string Fixed(double value, int decimals)
    {
        double rounded = Math.Round(FiniteNumber.Of(value), decimals, MidpointRounding.AwayFromZero);
        return (rounded == 0 ? 0 : rounded).ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
    }
}
