using System.Globalization;
using System.Text.Json;

namespace PlankFit.YardCheck;

/// <summary>One folder for one system: what must lie in it, and what must not.</summary>
internal sealed class YardFolder(string folder, string system, string checkout)
{
    /// <summary>With room for what a library grows by; symbols of Skia alone would be beyond it.</summary>
    private const double MostMegabytes = 250;

    /// <summary>What the runtime's packages bring that no list of theirs names.</summary>
    private static readonly string[] Unlisted =
    [
        "plankfit",
        "plankfit.exe",
        "plankfit.dll",
        "plankfit-page",
        "plankfit-page.exe",
        "plankfit-page.dll",
        "plankfit.deps.json",
        "plankfit-page.deps.json",
        "plankfit.runtimeconfig.json",
        "plankfit-page.runtimeconfig.json",
    ];

    private bool IsWindows => system.StartsWith("win", StringComparison.Ordinal);

    private string Program => Path.Combine(folder, "program");

    public void Check(Told told)
    {
        if (!Directory.Exists(Program))
        {
            told.That($"{system}: the folder is there", false, folder);
            return;
        }

        string[] there = [.. Directory.EnumerateFiles(Program).Select(f => Path.GetFileName(f)!)];
        (string Name, string Version, string[] Files)[] libraries =
        [
            .. Libraries("plankfit.deps.json")
                .Concat(Libraries("plankfit-page.deps.json"))
                .DistinctBy(l => l.Name),
        ];
        string[] listed = [.. libraries.SelectMany(l => l.Files).Distinct()];
        told.That(
            $"{system}: every file that the programs ask for is there ({listed.Length})",
            listed.Length > 100
                ? listed.Where(f => !IsSymbols(f)).Except(there)
                : ["too few are asked for"]
        );
        told.That(
            $"{system}: and no other, symbols of others least of all",
            there
                .Except(listed)
                .Except(Unlisted)
                .Where(f => !IsOwnSymbols(f))
                .Concat(there.Where(IsSymbols))
                .Distinct()
        );
        told.That($"{system}: what runs is made for it", there.SelectMany(NotMadeForIt));
        Licences(told, libraries);
        Starting(told);
        double size =
            new DirectoryInfo(folder)
                .EnumerateFiles("*", SearchOption.AllDirectories)
                .Sum(f => f.Length) / 1e6;
        told.That(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{system}: {size:0} MB in {there.Length} files of program, below {MostMegabytes} MB"
            ),
            size < MostMegabytes
        );
    }

    private void Licences(
        Told told,
        IEnumerable<(string Name, string Version, string[] Files)> libraries
    )
    {
        string notices = File.ReadAllText(Path.Combine(folder, "THIRD-PARTY-NOTICES.txt"));
        told.That(
            $"{system}: every package in it is named with its version and licence",
            libraries
                .Where(l =>
                    l.Files.Length > 0
                    && !l.Name.StartsWith("PlankFit", StringComparison.OrdinalIgnoreCase)
                    && !notices.Contains(
                        $"\n{l.Name} {l.Version}\nLicence: ",
                        StringComparison.OrdinalIgnoreCase
                    )
                )
                .Select(l => $"{l.Name} {l.Version}")
        );
        bool hasScript =
            File.ReadAllBytes(Path.Combine(Program, "plankfit-page.dll"))
                .AsSpan()
                .IndexOf("Three.js Authors"u8)
            is >= 0;
        told.That(
            $"{system}: the licences' texts are there, the runtime's and PlankFit's among them",
            new[]
            {
                "The MIT License (MIT)\n\nCopyright (c) .NET Foundation and Contributors",
                "License notice for Zlib",
                "SIL OPEN FONT LICENSE Version 1.1",
                hasScript ? "\nthree 0." : "PlankFit",
            }
                .Where(t => !notices.Contains(t, StringComparison.Ordinal))
                .Concat(
                    File.ReadAllText(Path.Combine(folder, "LICENSE.txt"))
                    == File.ReadAllText(Path.Combine(checkout, "LICENSE"))
                        ? []
                        : ["LICENSE.txt"]
                )
        );
    }

    private void Starting(Told told)
    {
        string end =
            IsWindows ? ".cmd"
            : system.StartsWith("osx", StringComparison.Ordinal) ? ".command"
            : "";
        string[] starts =
        [
            $"Start PlankFit{end}",
            $"Start PlankFit for a phone{end}",
            IsWindows ? "plankfit.cmd" : "plankfit",
        ];
        told.That(
            $"{system}: what is pressed first is there and can be run, and tells what to do where the desktop stops it",
            starts
                .Where(s => !CanRun(Path.Combine(folder, s)))
                .Concat(
                    File.ReadAllText(Path.Combine(folder, "FIRST STEPS.txt"))
                        .Contains("WHERE THE DESKTOP STOPS IT", StringComparison.Ordinal)
                        ? []
                        : ["FIRST STEPS.txt"]
                )
                .Concat(
                    IsWindows
                        ? []
                        : new[] { "plankfit", "plankfit-page" }.Where(p =>
                            !CanRun(Path.Combine(Program, p))
                        )
                )
        );
        told.That(
            $"{system}: the demos are all there",
            new DirectoryInfo(Path.Combine(checkout, "hulls"))
                .EnumerateFiles("job.toml", SearchOption.AllDirectories)
                .Select(f => Path.GetRelativePath(checkout, f.FullName))
                .Where(f => !File.Exists(Path.Combine(folder, f)))
        );
    }

    private static bool IsOwnSymbols(string file) =>
        file.EndsWith(".pdb", StringComparison.Ordinal)
        && (
            file.StartsWith("PlankFit.", StringComparison.Ordinal)
            || file is "plankfit.pdb" or "plankfit-page.pdb"
        );

    private static bool IsSymbols(string file) =>
        Path.GetExtension(file) is ".pdb" or ".dbg" or ".debug" or ".dwarf" && !IsOwnSymbols(file);

    private bool CanRun(string path) =>
        File.Exists(path)
        && (
            IsWindows
            || OperatingSystem.IsWindows()
            || File.GetUnixFileMode(path).HasFlag(UnixFileMode.UserExecute)
        )
        // A batch file with the line ends of Unix loses its way.
        && (
            !IsWindows
            || File.ReadAllText(path).Count(c => c == '\n')
                == File.ReadAllText(path).Split("\r\n").Length - 1
        );

    /// <summary>By the first bytes of a file: PE for x64 (0x8664), Mach-O for arm64, alone or among others, ELF for x86-64 (62).</summary>
    private IEnumerable<string> NotMadeForIt(string name)
    {
        bool isProgram =
            name is "plankfit" or "plankfit-page" or "plankfit.exe" or "plankfit-page.exe";
        bool isNative =
            name.Contains(".so", StringComparison.Ordinal)
            || name.EndsWith(".dylib", StringComparison.Ordinal);
        if (!isProgram && !isNative)
        {
            yield break;
        }

        byte[] head = new byte[512];
        using FileStream file = File.OpenRead(Path.Combine(Program, name));
        int read = file.ReadAtLeast(head, head.Length, throwOnEndOfStream: false);
        bool made =
            IsWindows
                ? read == head.Length
                    && head is [(byte)'M', (byte)'Z', ..]
                    && BitConverter.ToUInt16(head, BitConverter.ToInt32(head, 0x3c) + 4) == 0x8664
            : system.StartsWith("osx", StringComparison.Ordinal)
                ? head
                    is [0xcf, 0xfa, 0xed, 0xfe, 0x0c, 0, 0, 1, ..]
                        or [0xca, 0xfe, 0xba, 0xbe, ..]
            : head is [0x7f, (byte)'E', (byte)'L', (byte)'F', 2, ..] && head[18] == 62;
        if (!made)
        {
            yield return name;
        }
    }

    /// <summary>What a program's own list has: every library, and the files of it that are copied for this system.</summary>
    private IEnumerable<(string Name, string Version, string[] Files)> Libraries(string list)
    {
        using var read = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(Program, list)));
        JsonElement target = read
            .RootElement.GetProperty("targets")
            .EnumerateObject()
            .Single(t => t.Name.EndsWith("/" + system, StringComparison.Ordinal))
            .Value;
        foreach (JsonProperty library in target.EnumerateObject())
        {
            string[] name = library.Name.Split('/');
            yield return (
                name[0].Replace("runtimepack.", "", StringComparison.Ordinal),
                name[1],
                [
                    .. new[] { "runtime", "native" }
                        .Where(kind => library.Value.TryGetProperty(kind, out _))
                        .SelectMany(kind => library.Value.GetProperty(kind).EnumerateObject())
                        .Select(f => Path.GetFileName(f.Name)),
                ]
            );
        }
    }
}
