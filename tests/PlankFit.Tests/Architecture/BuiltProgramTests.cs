using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace PlankFit.Tests.Architecture;

/// <summary>What lies beside the built program: the licences of others' work in it, and nothing of the machine that built it.</summary>
public sealed partial class BuiltProgramTests
{
    private static string Root => HouseRules.Root();

    /// <summary>Where the program itself is built, with its images made ahead of time: the same path below its project as ours below the tests'.</summary>
    private static string Program => Built("PlankFit.Cli");

    private static string Built(string project) =>
        Path.Combine(
            Root,
            "src",
            project,
            Path.GetRelativePath(
                Path.Combine(Root, "tests", "PlankFit.Tests"),
                AppContext.BaseDirectory
            )
        );

    private static string Notices => Path.Combine(Program, "THIRD-PARTY-NOTICES.txt");

    [Fact]
    public void EveryLibraryBesideTheProgramIsInTheNotices()
    {
        string text = File.ReadAllText(Notices);
        string[] named =
        [
            .. FilesLine()
                .Matches(text)
                .SelectMany(m => m.Groups[1].Value.Split(", ", StringSplitOptions.TrimEntries)),
        ];
        string[] beside =
        [
            .. Directory
                .EnumerateFiles(Program)
                .Select(f => Path.GetFileName(f)!)
                .Where(f =>
                    (f.EndsWith(".dll", StringComparison.Ordinal) || f.Contains(".so"))
                    && !f.StartsWith("PlankFit.", StringComparison.Ordinal)
                    && f != "plankfit.dll"
                ),
        ];
        Assert.True(beside.Length > 12);
        Assert.Empty(beside.Except(named));
    }

    [Fact]
    public void EveryPackageOfTheProgramHasNameVersionLicenceAndText()
    {
        string text = File.ReadAllText(Notices);
        var versions = XDocument.Load(Path.Combine(Root, "src", "Directory.Packages.props"));
        Assert.All(
            versions.Descendants("PackageVersion"),
            p =>
                Assert.Matches(
                    $@"\n{Regex.Escape(p.Attribute("Include")!.Value)} {Regex.Escape(p.Attribute("Version")!.Value)}\nLicence: \S",
                    text
                )
        );
        foreach (Match licence in LicenceLine().Matches(text))
        {
            string name = licence.Groups[1].Value;
            Assert.True(
                text.Contains($"\nThe text of {name}\n", StringComparison.Ordinal)
                    || name == "as below",
                name
            );
        }

        foreach (
            string says in new[]
            {
                "Permission is hereby granted, free of charge, to any person obtaining a copy of this software",
                "Version 2.0, January 2004",
                "Redistributions in binary form must reproduce",
                "SIL OPEN FONT LICENSE Version 1.1",
                "The Inter Project Authors",
                "SCIP",
                "HiGHS",
                "Abseil",
                "Skia",
            }
        )
        {
            Assert.Contains(says, text, StringComparison.Ordinal);
        }
    }

    /// <summary>What the solvers' package bundles has no texts in it: each library beside the program is named, and the text of each licence that is named is there.</summary>
    [Fact]
    public void EveryBundledLibraryIsNamedWithALicenceWhoseTextIsThere()
    {
        string text = File.ReadAllText(Notices);
        int from = text.IndexOf(
            "Libraries that the native packages bundle",
            StringComparison.Ordinal
        );
        string bundled = text[from..text.IndexOf("Their makers", from, StringComparison.Ordinal)];
        string[] licences =
        [
            .. BundledLicence().Matches(bundled).Select(m => m.Groups[1].Value).Distinct(),
        ];
        Assert.True(licences.Length > 6, string.Join(' ', licences));
        Assert.All(
            licences,
            l => Assert.Contains($"\nThe text of {l}\n", text, StringComparison.Ordinal)
        );
        foreach (
            string says in new[]
            {
                "Eclipse Public License - v 2.0",
                "Mozilla Public License Version 2.0",
                "Boost Software License - Version 1.0",
                "\"bzip2\", the associated library \"libbzip2\"",
                "This notice may not be removed or altered from any source distribution.",
            }
        )
        {
            Assert.Contains(says, text, StringComparison.Ordinal);
        }

        string[] names = bundled.Split([' ', ',', '\n'], StringSplitOptions.RemoveEmptyEntries);
        string[] solvers =
        [
            .. Directory
                .EnumerateFiles(Program)
                .Select(f => Path.GetFileName(f)!)
                .Where(f => f.Contains(".so", StringComparison.Ordinal) && f != "libSkiaSharp.so")
                .Select(f => f[..f.IndexOf(".so", StringComparison.Ordinal)]),
        ];
        Assert.True(solvers.Length > 50, $"{solvers.Length}");
        Assert.All(
            solvers,
            f =>
                Assert.Contains(
                    names,
                    n =>
                        n == f
                        || (n.EndsWith('*') && f.StartsWith(n[..^1], StringComparison.Ordinal))
                )
        );
    }

    [Theory]
    [InlineData("PlankFit.Cli")]
    [InlineData("PlankFit.Page")]
    public void NoFolderOfTheBuildingMachineStandsInTheProgram(string project)
    {
        byte[][] root = [Encoding.UTF8.GetBytes(Root), Encoding.Unicode.GetBytes(Root)];
        string[] ours =
        [
            .. Directory
                .EnumerateFiles(Built(project))
                .Where(f =>
                    Path.GetFileName(f).StartsWith("plankfit", StringComparison.OrdinalIgnoreCase)
                ),
        ];
        Assert.True(ours.Length >= 9);
        Assert.All(
            ours,
            f =>
            {
                byte[] bytes = File.ReadAllBytes(f);
                Assert.All(root, r => Assert.True(bytes.AsSpan().IndexOf(r) < 0, f));
            }
        );
    }

    /// <summary>A package without its hash in a lock file could be another tomorrow.</summary>
    [Fact]
    public void EveryProjectHasItsLockFile() =>
        Assert.All(
            new[] { "src", "tests" }.SelectMany(f =>
                Directory.EnumerateFiles(
                    Path.Combine(Root, f),
                    "*.csproj",
                    SearchOption.AllDirectories
                )
            ),
            p =>
                Assert.True(
                    File.Exists(Path.Combine(Path.GetDirectoryName(p)!, "packages.lock.json")),
                    p
                )
        );

    [GeneratedRegex("^Files: (.+)$", RegexOptions.Multiline)]
    private static partial Regex FilesLine();

    [GeneratedRegex(@"\s(\S+)\s+https://\S+$", RegexOptions.Multiline)]
    private static partial Regex BundledLicence();

    [GeneratedRegex("^Licence: ([^.\n ]+)$", RegexOptions.Multiline)]
    private static partial Regex LicenceLine();
}
