namespace SheetGen.Model.Units;

/// <summary>The one length unit of a project. All lengths, stations, elevations and coordinates of a project are in it.</summary>
public enum LengthUnit
{
    /// <summary>International foot, 0.3048 m exactly (85 FR 62698).</summary>
    Foot,

    /// <summary>US survey foot, 1200/3937 m exactly (Mendenhall Order, 1893; from memory).</summary>
    SurveyFoot,

    /// <summary>Metre.</summary>
    Metre,
}
