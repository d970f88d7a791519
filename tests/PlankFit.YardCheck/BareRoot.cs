using System.Diagnostics;
using System.Globalization;
using System.Security.Cryptography;

namespace PlankFit.YardCheck;

/// <summary>
/// A root with the folder for Linux in it, the C and C++ libraries, /proc and /dev/urandom (of which the workbooks' library draws a number), and nothing else: no .NET,
/// no OpenSSL, no shell, no fonts, no list of users.
/// </summary>
internal sealed class BareRoot(string folder)
{
    private const int Port = 18731;

    private static readonly string[] Libraries =
    [
        "ld-linux-x86-64.so.2",
        "libc.so.6",
        "libm.so.6",
        "libdl.so.2",
        "libpthread.so.0",
        "librt.so.1",
        "libstdc++.so.6",
        "libgcc_s.so.1",
    ];

    private readonly string root = Directory.CreateTempSubdirectory("plankfit-bare-").FullName;

    public async Task Check(Told told)
    {
        const string what = "linux-x64 in a bare root";
        try
        {
            if (WhyNot() is { } why)
            {
                told.Skipped(what, why);
                return;
            }

            Fill();
            await Laying(told);
            await Looking(told);
        }
        finally
        {
            Directory.Delete(root, recursive: true);
        }
    }

    private static string? WhyNot() =>
        !OperatingSystem.IsLinux() ? "this is no Linux"
        : Environment.UserName != "root" ? "only root may change the root"
        : Said("unshare", "--mount", "true").Exit != 0 ? "no mount may be made here"
        : null;

    private void Fill()
    {
        foreach (string empty in (string[])["proc", "dev", "tmp"])
        {
            Directory.CreateDirectory(Path.Combine(root, empty));
        }

        string[] known = Said("ldconfig", "-p").Out.Split('\n', StringSplitOptions.TrimEntries);
        foreach (string library in Libraries)
        {
            string at = known
                .First(l =>
                    l.StartsWith($"{library} (libc6,x86-64", StringComparison.Ordinal)
                    || l.StartsWith($"{library} (ELF", StringComparison.Ordinal)
                )
                .Split("=> ")[1];
            string place = library.StartsWith("ld-", StringComparison.Ordinal)
                ? "/lib64/" + library
                : at;
            Directory.CreateDirectory(Path.GetDirectoryName(root + place)!);
            File.Copy(at, root + place);
        }

        _ = Said("mknod", Path.Combine(root, "dev", "urandom"), "c", "1", "9");
        _ = Said("cp", "-a", folder, Path.Combine(root, "yard"));
    }

    private async Task Laying(Told told)
    {
        var times = new List<double>();
        bool isSaid = true;
        for (int i = 0; i < 5; i++)
        {
            var watch = Stopwatch.StartNew();
            (int exit, string said) = await Within("/yard/program/plankfit", "--version");
            times.Add(watch.Elapsed.TotalSeconds);
            isSaid &= exit == 0 && said.StartsWith("1.", StringComparison.Ordinal);
        }

        times.Sort();
        told.That($"in a bare root it says its version: {Seconds(times[2])} from nothing", isSaid);

        var laying = Stopwatch.StartNew();
        (int code, string words) = await Within(
            "/yard/program/plankfit",
            "lay",
            "/yard/hulls/survey-launch/job.toml",
            "--out",
            "/laid"
        );
        double took = laying.Elapsed.TotalSeconds;
        string laid = Path.Combine(root, "laid");
        told.That(
            $"in a bare root it lays the launch: {Seconds(took)}",
            code == 0 && File.Exists(Path.Combine(laid, "bench-book.pdf")),
            words
        );
        told.That("and its list has the system's own hash of every file", Mismarked(laid));
    }

    /// <summary>Lines of files.txt that are a size, a hash and a name; each file's hash by the runtime's own SHA-256.</summary>
    private static IEnumerable<string> Mismarked(string laid)
    {
        int held = 0;
        if (File.Exists(Path.Combine(laid, "files.txt")))
        {
            foreach (string line in File.ReadLines(Path.Combine(laid, "files.txt")))
            {
                string? hash = line.Split('\t')
                    .FirstOrDefault(p => p.Length == 64 && p.All(char.IsAsciiHexDigitLower));
                string? name = line.Split('\t')
                    .FirstOrDefault(p => p.Length > 0 && File.Exists(Path.Combine(laid, p)));
                if (hash is null || name is null)
                {
                    continue;
                }

                held++;
                if (
                    Convert.ToHexStringLower(
                        SHA256.HashData(File.ReadAllBytes(Path.Combine(laid, name)))
                    ) != hash
                )
                {
                    yield return name;
                }
            }
        }

        if (held < 100)
        {
            yield return string.Create(
                CultureInfo.InvariantCulture,
                $"only {held} files were held"
            );
        }
    }

    private async Task Looking(Told told)
    {
        var watch = Stopwatch.StartNew();
        using Process page = Start(
            "/yard/program/plankfit-page",
            "/yard/hulls/survey-launch/job.toml",
            "--no-browser",
            "--port",
            Port.ToString(CultureInfo.InvariantCulture)
        );
        try
        {
            string? address = await page
                .StandardOutput.ReadLineAsync()
                .WaitAsync(TimeSpan.FromMinutes(2));
            double served = watch.Elapsed.TotalSeconds;
            if (!Uri.TryCreate(address, UriKind.Absolute, out Uri? at))
            {
                told.That(
                    "in a bare root the page serves",
                    false,
                    await page.StandardError.ReadToEndAsync()
                );
                return;
            }

            using var client = new HttpClient { BaseAddress = at };
            string picture = "";
            for (int i = 0; i < 600 && !picture.Contains("<svg", StringComparison.Ordinal); i++)
            {
                await Task.Delay(50);
                picture = await client.GetStringAsync(
                    "/job/1/picture/1?turned=30&tilted=30&upside=false"
                );
            }

            told.That(
                $"in a bare root the page serves after {Seconds(served)} and has its first picture after {Seconds(watch.Elapsed.TotalSeconds)}",
                picture.Contains("<svg", StringComparison.Ordinal) && picture.Length > 20_000
            );
        }
        finally
        {
            page.Kill(entireProcessTree: true);
            await page.WaitForExitAsync();
        }
    }

    private async Task<(int Exit, string Said)> Within(params string[] command)
    {
        using Process process = Start(command);
        Task<string> error = process.StandardError.ReadToEndAsync();
        string said = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        return (process.ExitCode, said + await error);
    }

    /// <summary>In a mount space of its own, which ends with it: /proc is put there and the root changed.</summary>
    private Process Start(params string[] command)
    {
        var start = new ProcessStartInfo(
            "unshare",
            [
                "--mount",
                "--propagation",
                "private",
                "sh",
                "-c",
                "mount -t proc proc \"$0/proc\" && exec env -i \"$(command -v chroot)\" \"$0\" \"$@\"",
                root,
                .. command,
            ]
        )
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        return Process.Start(start)!;
    }

    private static (int Exit, string Out) Said(string program, params string[] arguments)
    {
        using Process process = Process.Start(
            new ProcessStartInfo(program, arguments)
            {
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            }
        )!;
        string said = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, said);
    }

    private static string Seconds(double s) =>
        string.Create(CultureInfo.InvariantCulture, $"{s:0.00} s");
}
