using System.Runtime.CompilerServices;

[assembly: InternalsVisibleTo("SheetGen.Tests")]
