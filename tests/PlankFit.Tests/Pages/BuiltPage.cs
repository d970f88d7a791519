using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;

namespace PlankFit.Tests.Pages;

/// <summary>The page's program as it was built, a process of its own.</summary>
internal static class BuiltPage
{
    public static Process Start(string job, int port) =>
        Process.Start(
            new ProcessStartInfo(
                "dotnet",
                [
                    Path.Combine(AppContext.BaseDirectory, "plankfit-page.dll"),
                    job,
                    "--no-browser",
                    "--port",
                    port.ToString(CultureInfo.InvariantCulture),
                ]
            )
            {
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            }
        )!;

    public static async Task Kill(Process process)
    {
        process.Kill(entireProcessTree: true);
        await process.WaitForExitAsync(ServedJob.Stop);
    }

    /// <summary>One that was free a moment ago.</summary>
    public static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
