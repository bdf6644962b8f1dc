namespace SheetGen.ProjectFile.Keys;

/// <summary>Kind of a value of the project file.</summary>
public enum ValueKind
{
    /// <summary>A text that is not empty.</summary>
    Text,

    /// <summary>true or false.</summary>
    Flag,

    Integer,

    /// <summary>A number without unit.</summary>
    Number,

    /// <summary>A length, elevation, offset or coordinate: in the project's unit, or with its own.</summary>
    Length,

    /// <summary>A station: a plain number, 12+34.56 in feet, 1+234.56 in metres.</summary>
    Station,

    /// <summary>An angle in degrees; as 89-30-15 in degrees, minutes and seconds.</summary>
    Angle,

    /// <summary>A direction clockwise from north: degrees, a quadrant bearing N 62-15 E, or a point of the compass.</summary>
    Azimuth,

    /// <summary>An angle from vertical: degrees, or a ratio 1:10.</summary>
    Lean,

    /// <summary>Rise per run: 0.01, 1 % or 1:100.</summary>
    Slope,

    /// <summary>A steel grade in ksi: 75, 75 ksi, Gr 75, or in MPa.</summary>
    Grade,

    /// <summary>A ratio: 0.05 or 5 %.</summary>
    Share,

    /// <summary>A force, strength or amount of steel: in the unit of the key's measure, or with its own.</summary>
    Measure,

    /// <summary>A drawing scale: 10 (1 in = 10 ft), 100 (1:100 in metres) or 1:120.</summary>
    Scale,

    /// <summary>One of a list of words.</summary>
    Choice,

    /// <summary>A block of keys.</summary>
    Map,

    /// <summary>A list of values of one kind.</summary>
    List,

    /// <summary>A block whose keys are names of the user's own.</summary>
    Names,
}
