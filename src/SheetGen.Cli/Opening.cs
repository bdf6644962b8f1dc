using System.ComponentModel;
using System.Diagnostics;

namespace SheetGen.Cli;

/// <summary>Opens results with the programs that the system has for them.</summary>
public static class Opening
{
    /// <summary>Opens a file; where the system has no program for it, the user is told and nothing else happens.</summary>
    public static void Open(string path, Screen screen) => Start(Path.GetFullPath(path), path, screen);

    /// <summary>Opens an address of this machine in the browser, as <see cref="Open"/> does.</summary>
    public static void OpenAddress(string address, Screen screen) => Start(address, address, screen);

    private static void Start(string what, string shown, Screen screen)
    {
        try
        {
            using Process? opened = OperatingSystem.IsWindows() ? Process.Start(new ProcessStartInfo(what) { UseShellExecute = true })
                : Process.Start(new ProcessStartInfo(OperatingSystem.IsMacOS() ? "open" : "xdg-open", [what]) { RedirectStandardError = true, RedirectStandardOutput = true });
        }
        catch (Exception e) when (e is Win32Exception or InvalidOperationException or IOException or PlatformNotSupportedException)
        {
            screen.Tell($"cannot open {shown}: this system has no program for it");
        }
    }
}
