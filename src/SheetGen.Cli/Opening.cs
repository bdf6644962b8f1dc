using System.ComponentModel;
using System.Diagnostics;

namespace SheetGen.Cli;

/// <summary>Opens results with the programs that the system has for them.</summary>
public static class Opening
{
    /// <summary>Opens a file; where the system has no program for it, the user is told and nothing else happens.</summary>
    public static void Open(string path, Screen screen)
    {
        try
        {
            using Process? opened = OperatingSystem.IsWindows() ? Process.Start(new ProcessStartInfo(Path.GetFullPath(path)) { UseShellExecute = true })
                : Process.Start(new ProcessStartInfo(OperatingSystem.IsMacOS() ? "open" : "xdg-open", [Path.GetFullPath(path)]) { RedirectStandardError = true, RedirectStandardOutput = true });
        }
        catch (Exception e) when (e is Win32Exception or InvalidOperationException or IOException or PlatformNotSupportedException)
        {
            screen.Tell($"cannot open {path}: this system has no program for it");
        }
    }
}
