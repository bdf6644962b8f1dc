using SheetGen.Model.Units;
using SheetGen.ProjectFile.Building;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Inputs.Dxf;

/// <summary>What a project file takes from drawings.</summary>
internal sealed class DxfSource(ForeignFiles files, LengthUnit unit)
{
    public IReadOnlyList<(string Key, Node Value)>? LayoutLine(MapItem source) => unit == LengthUnit.Foot ? null : files.Open(source, "file", InputFile.MostDrawing) is null ? null : null;

    public IReadOnlyList<Node>? Obstructions(MapItem source, LayoutLines lines) => null;
}
