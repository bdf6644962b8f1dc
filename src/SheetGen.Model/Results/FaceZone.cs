namespace SheetGen.Model.Results;

/// <summary>Where on the face a nail stands; what is not inner has an area of its own kind and is listed apart.</summary>
public enum FaceZone
{
    Inner,

    /// <summary>The highest nail of its column.</summary>
    UpperRow,

    /// <summary>Within a horizontal spacing of a corner's mitre.</summary>
    Corner,

    /// <summary>Within a horizontal spacing of an end of the wall.</summary>
    End,
}
