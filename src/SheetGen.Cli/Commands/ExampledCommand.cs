using System.CommandLine;

namespace SheetGen.Cli.Commands;

/// <summary>A command whose help ends with examples.</summary>
/// <param name="name">Name that is typed.</param>
/// <param name="description">One sentence of what it does and writes.</param>
/// <param name="examples">Lines, each a command line and what it gives.</param>
public sealed class ExampledCommand(string name, string description, params string[] examples) : Command(name, description)
{
    /// <summary>Lines, each a command line and what it gives.</summary>
    public IReadOnlyList<string> Examples { get; } = examples;
}
