namespace SheetGen.ProjectFile.Keys;

/// <summary>Short forms that make the rows of the key table.</summary>
internal static class KeyForms
{
    public static Key Text(string name, string meaning, string example) => new(name, ValueKind.Text, meaning) { Example = example };

    public static Key Integer(string name, string meaning, ValueRange range, string example) =>
        new(name, ValueKind.Integer, meaning) { Range = range, Example = example };

    public static Key Number(string name, string meaning, ValueRange range, string example) =>
        new(name, ValueKind.Number, meaning) { Range = range, Example = example };

    public static Key Length(string name, string meaning, ValueRange range, string example) =>
        new(name, ValueKind.Length, meaning) { Range = range, Example = example };

    public static Key Elevation(string name, string meaning, string example) => Length(name, meaning, ValueRange.Elevation, example);

    public static Key Coordinate(string name, string meaning, string example) => Length(name, meaning, ValueRange.Coordinate, example);

    public static Key Station(string name, string meaning, string example) =>
        new(name, ValueKind.Station, meaning) { Range = new ValueRange(-1e7, true, 1e7), Example = example };

    public static Key StationPair(string name, string meaning, string example) =>
        List(name, meaning, 2, Station("station", "Station.", "100+00")) with { MaxCount = 2, Example = example };

    public static Key Angle(string name, string meaning, ValueRange range, string example) =>
        new(name, ValueKind.Angle, meaning) { Range = range, Example = example };

    public static Key Azimuth(string name, string meaning, string example) =>
        new(name, ValueKind.Azimuth, meaning) { Range = new ValueRange(-360, true, 360), Example = example };

    public static Key Slope(string name, string meaning, ValueRange range, string example) =>
        new(name, ValueKind.Slope, meaning) { Range = range, Example = example };

    /// <summary>The key with the range that is usual in feet and in metres.</summary>
    public static Key Usually(this Key key, double least, double most, double leastMetric, double mostMetric) =>
        key with { Usual = new ValueRange(least, true, most), UsualMetric = new ValueRange(leastMetric, true, mostMetric) };

    /// <summary>The key with other words for its choices.</summary>
    public static Key Also(this Key key, params (string Words, string Choice)[] others) => key with
    {
        Synonyms = others.SelectMany(o => o.Words.Split(' ').Select(w => (w, o.Choice))).ToDictionary(o => o.w, o => o.Choice),
    };

    public static Key Side(string name, string meaning, string example) => Choice(name, meaning, example, "left", "right")
        .Also(("l lt leftside lefthand lh", "left"), ("r rt rightside righthand rh", "right"));

    public static Key Share(string name, string meaning, ValueRange range, string example) =>
        new(name, ValueKind.Share, meaning) { Range = range, Example = example };

    public static Key Measured(string name, string meaning, Measure measure, ValueRange range, string example) =>
        new(name, ValueKind.Measure, meaning) { Measure = measure, Range = range, Example = example };

    public static Key Flag(string name, string meaning, string example) => new(name, ValueKind.Flag, meaning) { Example = example };

    public static Key Choice(string name, string meaning, string example, params string[] choices) =>
        new(name, ValueKind.Choice, meaning) { Choices = choices, Example = example };

    public static Key Map(string name, string meaning, params Key[] children) => new(name, ValueKind.Map, meaning) { Children = children };

    public static Key List(string name, string meaning, int minCount, Key item) =>
        new(name, ValueKind.List, meaning) { Item = item, MinCount = minCount };

    /// <summary>A list of [station, elevation] whose points may be the intersections (PVI) of vertical curves.</summary>
    public static Key Profile(string name, string meaning, string example) =>
        List(name, meaning, 1, Map("point", "A point of a profile, [station, elevation] for short; with a vertical curve it is the point of vertical intersection (PVI).",
            Station("station", "Station.", "100+00") with { Required = true },
            Elevation("elevation", "Elevation.", "118.0") with { Required = true },
            Length("curve", "Length of a parabolic vertical curve, half of it on each side of the point.", ValueRange.Over0, "400"),
            Length("curve_in", "Length before the point of a parabolic vertical curve that is not symmetrical; with curve_out.", ValueRange.Over0, "150"),
            Length("curve_out", "Length behind the point of such a curve.", ValueRange.Over0, "250"),
            Length("curve_radius", "Radius of a circular vertical curve.", ValueRange.Over0, "3000"))
        with
        {
            Short = ["station", "elevation"],
            Shared = "profile point",
            Sources = SourceKeys.OfProfile,
        }) with
        {
            Example = example,
        };

    /// <summary>A list of [station, elevation] of level steps.</summary>
    public static Key Steps(string name, string meaning, string example) =>
        List(name, meaning, 1, Map("point", "A step, [station, elevation] for short.",
            Station("station", "Station.", "100+00") with { Required = true },
            Elevation("elevation", "Elevation.", "118.0") with { Required = true })
        with
        {
            Short = ["station", "elevation"],
            Shared = "step",
        }) with
        {
            Example = example,
        };
}
