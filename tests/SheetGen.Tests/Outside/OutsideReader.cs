using System.ComponentModel;
using System.Diagnostics;
using System.Runtime.CompilerServices;
using Xunit;

namespace SheetGen.Tests.Outside;

/// <summary>A program that was not written here and reads what we write.</summary>
/// <remarks>Where it is missing the test is skipped with a message; where the environment says CI=true it fails, so that a skip cannot hide.</remarks>
public sealed class OutsideReader
{
    private readonly string _name;
    private readonly string _program;
    private readonly string[] _first;

    private OutsideReader(string name, string program, params string[] first) =>
        (_name, _program, _first) = (name, program, first);

    /// <summary>LibreCAD without a screen.</summary>
    public static OutsideReader LibreCad { get; } = new("LibreCAD", Find("librecad"));

    /// <summary>LibreOffice without a screen.</summary>
    public static OutsideReader LibreOffice { get; } = new("LibreOffice", Find("soffice"));

    /// <summary>Text of a PDF (poppler).</summary>
    public static OutsideReader PdfToText { get; } = new("pdftotext", Find("pdftotext"));

    /// <summary>Any other program, found on the path.</summary>
    public static OutsideReader Program(string name) => new(name, Find(name));

    /// <summary>A script of tests/Tools, run by the system's Python with a module that it needs.</summary>
    /// <param name="script">File name of the script.</param>
    /// <param name="module">Module that must be there, for example ezdxf.</param>
    public static OutsideReader Script(string script, string module)
    {
        var python = File.Exists("/usr/bin/python3") ? "/usr/bin/python3" : Find("python3");
        var there = python.Length > 0 && Start(python, "C.UTF-8", ["-c", "import " + module], TimeSpan.FromMinutes(1)).ExitCode == 0;
        return new($"python3 with {module}", there ? python : "", Path.Combine(ToolsFolder(), script));
    }

    /// <summary>The dxf package of Node.js, see tests/Tools/node: <c>npm install --no-package-lock</c> there.</summary>
    public static OutsideReader NodeDxf() => NodeScript("read_dxf.js", "dxf");

    /// <summary>A script of tests/Tools/node with a package that it needs.</summary>
    public static OutsideReader NodeScript(string script, string package)
    {
        string folder = Path.Combine(ToolsFolder(), "node"), node = Find("node").Length > 0 ? Find("node") : Find("nodejs");
        return new($"Node.js with the {package} package", Directory.Exists(Path.Combine(folder, "node_modules", package)) ? node : "", Path.Combine(folder, script));
    }

    /// <summary>Runs it, skipping or failing the test if it is missing, and failing it if it does not end in time.</summary>
    /// <remarks>Such programs write numbers as the environment's language does, so they get one that does not depend on who runs the tests.</remarks>
    public OutsideResult Run(params string[] arguments) => RunIn("C.UTF-8", arguments);

    /// <summary>As <see cref="Run"/>, in a language of the caller's choice, for example de_DE.UTF-8.</summary>
    public OutsideResult RunIn(string language, params string[] arguments)
    {
        if (_program.Length == 0)
        {
            var message = $"{_name} is not installed";
            if (Environment.GetEnvironmentVariable("CI") == "true")
                Assert.Fail(message);
            Assert.Skip(message);
        }
        return Start(_program, language, [.. _first, .. arguments], TimeSpan.FromMinutes(3));
    }

    private static OutsideResult Start(string program, string language, string[] arguments, TimeSpan timeout)
    {
        var start = new ProcessStartInfo(program, arguments)
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };
        start.Environment["LC_ALL"] = language;
        start.Environment["LANG"] = language;
        start.Environment["QT_QPA_PLATFORM"] = "offscreen";
        start.Environment["PYTHONIOENCODING"] = "utf-8";
        start.Environment["PYTHONDONTWRITEBYTECODE"] = "1";
        using var process = Process.Start(start) ?? throw new Win32Exception($"{program} did not start");
        var output = process.StandardOutput.ReadToEndAsync();
        var errors = process.StandardError.ReadToEndAsync();
        if (!process.WaitForExit(timeout))
        {
            process.Kill(entireProcessTree: true);
            Assert.Fail($"{program} did not end within {timeout.TotalMinutes} minutes");
        }
        process.WaitForExit();
        return new(process.ExitCode, output.GetAwaiter().GetResult(), errors.GetAwaiter().GetResult());
    }

    private static string Find(string name)
    {
        var folders = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator);
        return folders.Select(f => Path.Combine(f, name)).FirstOrDefault(File.Exists) ?? "";
    }

    public static string ToolsFolder([CallerFilePath] string thisFile = "") =>
        Path.Combine(Path.GetDirectoryName(thisFile)!, "..", "..", "Tools");
}
