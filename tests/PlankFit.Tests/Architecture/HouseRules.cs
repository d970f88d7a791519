using System.Reflection;
using System.Text.RegularExpressions;
using ArchUnitNET.Loader;
using ArchUnitNET.xUnitV3;
using static ArchUnitNET.Fluent.ArchRuleDefinition;
using Assembly = System.Reflection.Assembly;

namespace PlankFit.Tests.Architecture;

/// <summary>The rules of the house, held by machine: one direction, small files, values that do not change, no clock and no chance in the source.</summary>
public sealed partial class HouseRules
{
    private static readonly Assembly Hashing = typeof(PlankFit.Hashing.Sha256Hash).Assembly;
    private static readonly Assembly Geometry = typeof(PlankFit.Geometry.Primitives.Vec3).Assembly;
    private static readonly Assembly Planking = typeof(PlankFit.Planking.Whole.Job).Assembly;
    private static readonly Assembly Nesting =
        typeof(PlankFit.Nesting.Effort.NestProgress).Assembly;
    private static readonly Assembly Reading = typeof(PlankFit.Reading.Jobs.JobReader).Assembly;
    private static readonly Assembly Draughting = typeof(PlankFit.Draughting.Drawing).Assembly;
    private static readonly Assembly Export = typeof(PlankFit.Export.Tables.Csv).Assembly;
    private static readonly Assembly App = typeof(PlankFit.App.Laying.LayRun).Assembly;

    private static readonly Assembly Cli = Assembly.Load("plankfit");
    private static readonly Assembly Page = typeof(PlankFit.Pages.Serving.PageServer).Assembly;

    private static readonly ArchUnitNET.Domain.Architecture House = new ArchLoader()
        .LoadAssemblies(Geometry, Planking, Nesting, Reading, Draughting, Export, App)
        .Build();

    [Theory]
    [InlineData("PlankFit.Hashing", "")]
    [InlineData("PlankFit.Geometry", "")]
    [InlineData("PlankFit.Planking", "PlankFit.Geometry")]
    [InlineData("PlankFit.Nesting", "PlankFit.Geometry PlankFit.Planking")]
    [InlineData("PlankFit.Reading", "PlankFit.Hashing PlankFit.Geometry PlankFit.Planking")]
    [InlineData("PlankFit.Draughting", "PlankFit.Hashing PlankFit.Geometry")]
    [InlineData("PlankFit.Export", "PlankFit.Geometry PlankFit.Planking PlankFit.Draughting")]
    [InlineData(
        "PlankFit.App",
        "PlankFit.Hashing PlankFit.Geometry PlankFit.Planking PlankFit.Nesting PlankFit.Reading PlankFit.Draughting PlankFit.Export"
    )]
    // Two ways in, neither of which knows the other.
    [InlineData(
        "plankfit",
        "PlankFit.Geometry PlankFit.Planking PlankFit.Draughting PlankFit.Export PlankFit.App"
    )]
    [InlineData(
        "plankfit-page",
        "PlankFit.Hashing PlankFit.Planking PlankFit.Reading PlankFit.Draughting PlankFit.Export PlankFit.App"
    )]
    public void EachProjectKnowsOnlyThoseBelowIt(string project, string mayKnow)
    {
        Assembly assembly = new[]
        {
            Hashing,
            Geometry,
            Planking,
            Nesting,
            Reading,
            Draughting,
            Export,
            App,
            Cli,
            Page,
        }.Single(a => a.GetName().Name == project);
        IEnumerable<string> known = assembly
            .GetReferencedAssemblies()
            .Select(a => a.Name!)
            .Where(n => n.StartsWith("PlankFit", StringComparison.OrdinalIgnoreCase));
        Assert.Subset(
            mayKnow.Split(' ', StringSplitOptions.RemoveEmptyEntries).ToHashSet(),
            known.ToHashSet()
        );
    }

    [Fact]
    public void OnlyTheSkiaFolderKnowsSkia() =>
        Types()
            .That()
            .ResideInAssembly(Export)
            .Or()
            .ResideInAssembly(Draughting)
            .And()
            .DoNotResideInNamespaceMatching(@"^PlankFit\.Draughting\.Skia")
            .Should()
            .NotDependOnAnyTypesThat()
            .ResideInNamespaceMatching("^SkiaSharp")
            .Check(House);

    [Fact]
    public void SheetsKnowNoBackend() =>
        Types()
            .That()
            .ResideInNamespaceMatching(@"^PlankFit\.Export\.")
            .Should()
            .NotDependOnAnyTypesThat()
            .ResideInNamespaceMatching(@"^PlankFit\.Draughting\.(Dxf|Svg|Skia|Files)")
            .Check(House);

    [Theory]
    [InlineData(typeof(PlankFit.Geometry.Primitives.Vec3))]
    [InlineData(typeof(PlankFit.Planking.Whole.Job))]
    [InlineData(typeof(PlankFit.Nesting.Effort.NestProgress))]
    public void KernelAndPlankingTouchNoFile(System.Type inAssembly)
    {
        string[] banned = ["System.IO.FileSystem", "System.Net.Http", "System.Console"];
        Assert.DoesNotContain(
            inAssembly.Assembly.GetReferencedAssemblies(),
            a => banned.Contains(a.Name)
        );
    }

    /// <summary>A value that can change under its reader is no value: public fields are read-only, public properties of records have no public setter.</summary>
    [Fact]
    public void PublicValuesDoNotChange()
    {
        IEnumerable<string> changing =
            from type in new[] { Geometry, Planking, Nesting, Draughting, Export }.SelectMany(a =>
                a.GetExportedTypes()
            )
            where !type.IsEnum
            from member in type.GetMembers(
                BindingFlags.Public
                    | BindingFlags.Instance
                    | BindingFlags.Static
                    | BindingFlags.DeclaredOnly
            )
            where
                member is FieldInfo { IsInitOnly: false, IsLiteral: false }
                || (
                    member is PropertyInfo { SetMethod: { IsPublic: true } set }
                    && !set
                        .ReturnParameter.GetRequiredCustomModifiers()
                        .Contains(typeof(System.Runtime.CompilerServices.IsExternalInit))
                )
            select $"{type.FullName}.{member.Name}";
        Assert.Empty(changing);
    }

    [Fact]
    public void FilesAreSmall()
    {
        IEnumerable<string> long_ = SourceFiles()
            .Select(f => (f, Lines: File.ReadLines(f).Count()))
            .Where(f => f.Lines > 350)
            .Select(f => $"{Path.GetFileName(f.f)}: {f.Lines} lines");
        Assert.Empty(long_);
    }

    [Fact]
    public void NoClockAndNoChanceInTheSource()
    {
        IEnumerable<string?> found = SourceFiles()
            .Where(f => Banned().IsMatch(File.ReadAllText(f)))
            .Select(Path.GetFileName);
        Assert.Empty(found);
    }

    /// <summary>On Linux the runtime's own hashes and random numbers are OpenSSL's, and where that is wanting the program ends: only the comparison in constant time is used.</summary>
    [Fact]
    public void NothingAsksForOpenSsl()
    {
        IEnumerable<string?> found = SourceFiles()
            .Where(f =>
                Path.GetFileName(f) != "Unguessable.cs"
                && NeedsOpenSsl().IsMatch(File.ReadAllText(f))
            )
            .Select(Path.GetFileName);
        Assert.Empty(found);
    }

    [Fact]
    public void NothingIsLeftForLater()
    {
        IEnumerable<string?> found = SourceFiles()
            .Where(f => Unfinished().IsMatch(File.ReadAllText(f)))
            .Select(Path.GetFileName);
        Assert.Empty(found);
    }

    /// <summary>A message counts and says one plank or two planks: "plank(s)" leaves that to its reader.</summary>
    [Fact]
    public void NoMessageHasItsPluralInBrackets()
    {
        IEnumerable<string> found = SourceFiles()
            .SelectMany(f =>
                ToChoose()
                    .Matches(File.ReadAllText(f))
                    .Select(m => $"{Path.GetFileName(f)}: {m.Value}")
            );
        Assert.Empty(found);
    }

    [Fact]
    public void TheTopHoldsOnlyWhatWasAgreed()
    {
        string[] agreed =
        [
            "README.md",
            "DEVELOPERS.md",
            "LICENSE",
            "PlankFit.sln",
            "src",
            "tests",
            "hulls",
            "output",
            "global.json",
        ];
        string root = Root();
        IEnumerable<string?> there = Directory
            .EnumerateFileSystemEntries(root)
            .Select(Path.GetFileName)
            .Where(n =>
                !n!.StartsWith('.') && n is not ("BenchmarkDotNet.Artifacts" or "TestResults")
            );
        Assert.Subset(agreed.ToHashSet(), there.ToHashSet()!);
    }

    /// <summary>The command line does without the web, and the page without geometry of its own: it names no surface, no curve and no strip.</summary>
    [Fact]
    public void TheWebIsThePagesAloneAndGeometryIsNot()
    {
        Assert.All(
            new[] { Geometry, Planking, Nesting, Reading, Draughting, Export, App, Cli },
            a =>
                Assert.DoesNotContain(
                    a.GetReferencedAssemblies(),
                    r => r.Name!.StartsWith("Microsoft.AspNetCore", StringComparison.Ordinal)
                )
        );
        Assert.DoesNotContain(Page.GetReferencedAssemblies(), r => r.Name == "PlankFit.Geometry");
    }

    /// <summary>The file that a project is built to.</summary>
    internal static string AssemblyOf(string project) =>
        project switch
        {
            "Cli" => "plankfit.dll",
            "Page" => "plankfit-page.dll",
            _ => $"PlankFit.{project}.dll",
        };

    internal static IEnumerable<string> SourceFiles() =>
        Directory
            .EnumerateFiles(Path.Combine(Root(), "src"), "*.cs", SearchOption.AllDirectories)
            .Where(f =>
                !f.Contains(
                    $"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}",
                    StringComparison.Ordinal
                )
            );

    internal static string Root()
    {
        string folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "PlankFit.sln")))
        {
            folder =
                Path.GetDirectoryName(folder)
                ?? throw new InvalidOperationException("the tests run outside the checkout");
        }

        return folder;
    }

    [GeneratedRegex(
        @"DateTime(Offset)?\.(Now|UtcNow|Today)|new Random\(\)|Random\.Shared|Guid\.NewGuid"
    )]
    private static partial Regex Banned();

    [GeneratedRegex(
        @"\b(SHA\d+|MD5|HMAC\w*|Aes|Rfc2898\w*|IncrementalHash|RandomNumberGenerator)\b"
    )]
    private static partial Regex NeedsOpenSsl();

    [GeneratedRegex(@"\{[^{}""\r\n]*\} [a-z-]+\(e?s\)")]
    private static partial Regex ToChoose();

    [GeneratedRegex(@"NotImplemented|\bTODO\b|\bFIXME\b|\bHACK\b")]
    private static partial Regex Unfinished();
}
