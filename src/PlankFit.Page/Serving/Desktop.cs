using System.ComponentModel;
using System.Diagnostics;

namespace PlankFit.Pages.Serving;

/// <summary>Opens an address in the browser of whoever sits at this computer, where there is a desktop; the address is printed anyway.</summary>
internal static class Desktop
{
    public static void Open(string address)
    {
        try
        {
            if (OperatingSystem.IsWindows())
            {
                Process.Start(new ProcessStartInfo(address) { UseShellExecute = true })?.Dispose();
            }
            else if (OperatingSystem.IsMacOS())
            {
                Process.Start("open", [address])?.Dispose();
            }
            else if (
                Environment.GetEnvironmentVariable("DISPLAY") is { Length: > 0 }
                || Environment.GetEnvironmentVariable("WAYLAND_DISPLAY") is { Length: > 0 }
            )
            {
                Process.Start("xdg-open", [address])?.Dispose();
            }
        }
        catch (Exception e) when (e is Win32Exception or InvalidOperationException)
        {
            // No desktop to open it on: the address stands on the terminal.
        }
    }
}
