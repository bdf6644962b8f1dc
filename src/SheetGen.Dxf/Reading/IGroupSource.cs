namespace SheetGen.Dxf;

/// <summary>Gives the groups of a file one after the other.</summary>
internal interface IGroupSource
{
    /// <summary>The line last read, from 1.</summary>
    int Line { get; }

    /// <summary>The next group, or null at the end of the file or after an error in the log.</summary>
    Group? Next();
}
