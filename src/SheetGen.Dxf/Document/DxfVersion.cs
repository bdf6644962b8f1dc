namespace SheetGen.Dxf;

/// <summary>The versions of the format that can be written.</summary>
public enum DxfVersion
{
    /// <summary>Release 2000: pure ASCII, read by nearly every program.</summary>
    AC1015,

    /// <summary>Release 2018: UTF-8.</summary>
    AC1032,
}
