using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace PlankFit.Tests.Architecture;

/// <summary>What lies beside the built program: the licences of others' work in it, and nothing of the machine that built it.</summary>
public sealed partial class BuiltProgramTests
{
    private static string Root => HouseRules.Root();

    /// <summary>Where the program itself is built, with its images made ahead of time: the same path below its project as ours below the tests'.</summary>
    private static string Program =>
        Path.Combine(
            Root,
            "src",
            "PlankFit.Cli",
            Path.GetRelativePath(
                Path.Combine(Root, "tests", "PlankFit.Tests"),
                AppContext.BaseDirectory
            )
        );

    private static string Notices => Path.Combine(Program, "THIRD-PARTY-NOTICES.txt");

    [Fact]
    public void Every_library_beside_the_program_is_in_the_notices()
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
    public void Every_package_of_the_program_has_name_version_licence_and_text()
    {
        string text = File.ReadAllText(Notices);
        XDocument versions = XDocument.Load(Path.Combine(Root, "src", "Directory.Packages.props"));
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

    [Fact]
    public void No_folder_of_the_building_machine_stands_in_the_program()
    {
        byte[][] root = [Encoding.UTF8.GetBytes(Root), Encoding.Unicode.GetBytes(Root)];
        string[] ours =
        [
            .. Directory
                .EnumerateFiles(Program)
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
    public void Every_project_has_its_lock_file() =>
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

    [GeneratedRegex("^Licence: ([^.\n ]+)$", RegexOptions.Multiline)]
    private static partial Regex LicenceLine();
}
