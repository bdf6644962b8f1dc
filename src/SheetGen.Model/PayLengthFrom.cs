namespace SheetGen.Model;

/// <summary>From where the paid length of a nail is measured.</summary>
public enum PayLengthFrom
{
    /// <summary>Front of the temporary shotcrete (the face).</summary>
    Face,

    /// <summary>Back of the temporary shotcrete.</summary>
    BackOfShotcrete,
}
