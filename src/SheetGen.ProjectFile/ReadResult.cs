using SheetGen.Model;
using SheetGen.Model.Problems;

namespace SheetGen.ProjectFile;

/// <summary>What reading a project file gives.</summary>
/// <param name="Project">The project; null where any problem is an error.</param>
/// <param name="Problems">Every problem of the file, in order of place.</param>
/// <param name="Text">The file's text, for showing lines of it; empty where it could not be read.</param>
public sealed record ReadResult(WallProject? Project, IReadOnlyList<Problem> Problems, string Text = "");
