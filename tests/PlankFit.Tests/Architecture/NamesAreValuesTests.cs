using System.Text.RegularExpressions;
using Mono.Cecil;
using Mono.Cecil.Cil;
using PlankFit.Planking.Findings;

namespace PlankFit.Tests.Architecture;

/// <summary>
/// Who wants to know a plank's side, layer or number asks its name, which is a value: read from the compiled code. No method that writes a name out, or reads in
/// words what a finding is about, takes strings apart as well; and what is called the name of a plank is one.
/// </summary>
public sealed partial class NamesAreValuesTests
{
    private static readonly string[] Names =
    [
        .. new[]
        {
            typeof(PlankId),
            typeof(PieceId),
            typeof(JointId),
            typeof(SeamId),
            typeof(Subject),
        }.Select(t => t.FullName!),
    ];

    private static readonly string[] TakesApart =
    [
        "get_Chars",
        "Substring",
        "Split",
        "IndexOf",
        "IndexOfAny",
        "LastIndexOf",
        "StartsWith",
        "EndsWith",
        "Trim",
        "TrimStart",
        "TrimEnd",
        "Remove",
        "Replace",
        "AsSpan",
        "ToCharArray",
    ];

    /// <summary>
    /// No plank is looked for in these: a record of sawn planks begins with its schema, and findings of a file are put in the order of its lines, which stand in
    /// words in what they are about.
    /// </summary>
    private static readonly string[] OtherText =
    [
        "PlankFit.Reading.AsBuilt.SawnPlanksFile.Read",
        "PlankFit.Reading.Text.InOrder.Key",
    ];

    [Fact]
    public void NoNameIsTakenApart() =>
        Assert.Equal(
            OtherText,
            Guilty(Source().Where(t => t.FullName != typeof(PlankId).FullName))
        );

    [Fact]
    public void WhoeverTakesOneApartIsFound()
    {
        TypeDefinition planted = AssemblyDefinition
            .ReadAssembly(typeof(Planted).Assembly.Location)
            .MainModule.GetType(typeof(NamesAreValuesTests).FullName)
            .NestedTypes.Single(t => t.Name == nameof(Planted));
        Assert.Equal(
            ["ByLambda", "InWords", "Number", "OfSide", "OneByOne"],
            Guilty([planted]).Select(name => name.Split('.')[^1])
        );
    }

    [Fact]
    public void WhatIsCalledANameIsOne()
    {
        IEnumerable<string> found =
            from type in Source().SelectMany(WithNested)
            from member in type
                .Properties.Select(p => (p.Name, Type: p.PropertyType))
                .Concat(type.Fields.Select(f => (f.Name, Type: f.FieldType)))
            where
                NameOfOne().IsMatch(member.Name)
                // What a file holds is words until it is read.
                && type.FullName != "PlankFit.Reading.AsBuilt.SawnEdgeText"
                && member.Type.FullName.Contains("System.String", StringComparison.Ordinal)
            select $"{type.FullName}.{member.Name}";
        Assert.Empty(found);
    }

    private static IEnumerable<TypeDefinition> Source() =>
        Directory
            .EnumerateFiles(AppContext.BaseDirectory, "PlankFit.*.dll")
            .Where(f => Path.GetFileName(f) != "PlankFit.Tests.dll")
            .SelectMany(f => AssemblyDefinition.ReadAssembly(f).MainModule.Types);

    private static IEnumerable<TypeDefinition> WithNested(TypeDefinition type) =>
        type.NestedTypes.SelectMany(WithNested).Prepend(type);

    /// <summary>Methods that both have a name as text and take text apart, with what the compiler makes of their lambdas, local functions and iterators.</summary>
    private static string[] Guilty(IEnumerable<TypeDefinition> types) =>
        [
            .. types
                .SelectMany(outer =>
                    WithNested(outer)
                        .SelectMany(t => t.Methods)
                        .Where(m => m.HasBody)
                        .Select(m => (Name: $"{outer.FullName}.{Written(m)}", m.Body))
                )
                .GroupBy(m => m.Name, m => m.Body)
                .Where(m =>
                    m.SelectMany(b => b.Instructions).Any(HasAName)
                    && m.SelectMany(b => b.Instructions).Any(IsTakingApart)
                )
                .Select(m => m.Key)
                .Order(StringComparer.Ordinal),
        ];

    /// <summary>The method as it stands in the source: the compiler's own names have it in angle brackets.</summary>
    private static string Written(MethodDefinition method) =>
        new[] { method.Name, method.DeclaringType.Name }
            .Select(n => MadeOf().Match(n).Groups[1].Value)
            .FirstOrDefault(n => n.Length > 0)
        ?? method.Name;

    private static bool HasAName(Instruction at) =>
        at.Operand is MethodReference called
        && (
            called.Name == "ToString"
                && (
                    Names.Contains(called.DeclaringType.FullName)
                    || at.Previous is { OpCode.Code: Code.Constrained, Operand: TypeReference on }
                        && Names.Any(n => on.FullName.Contains(n))
                )
            || called is GenericInstanceMethod { Name: "AppendFormatted" } written
                && written.GenericArguments.Any(a => Names.Any(n => a.FullName.Contains(n)))
            || called.FullName.EndsWith(
                "Planking.Findings.Finding::get_Where()",
                StringComparison.Ordinal
            )
        );

    private static bool IsTakingApart(Instruction at) =>
        at.Operand is MethodReference called
        && (
            called.DeclaringType.FullName is "System.String" or "System.MemoryExtensions"
                && TakesApart.Contains(called.Name)
            || called.DeclaringType.FullName == typeof(Regex).FullName
        );

    [GeneratedRegex(
        "^<?(?:(?:Plank|Piece|Joint|Seam)Ids?|Neighbour|Twin)(?:>|$)",
        RegexOptions.IgnoreCase
    )]
    private static partial Regex NameOfOne();

    [GeneratedRegex("^<([^<>]+)>")]
    private static partial Regex MadeOf();

    /// <summary>Each way of doing what is forbidden, and one of what is not.</summary>
    private static class Planted
    {
        public static bool OfSide(PlankId id) => id.ToString()[0] == 'S';

        public static string Number(PieceId id) => $"{id}".Split('-')[1];

        public static bool InWords(Finding finding) =>
            finding.Where.StartsWith("S1-", StringComparison.Ordinal);

        public static IEnumerable<string> ByLambda(IEnumerable<PlankId> ids) =>
            ids.Select(i => i.ToString()).Select(name => name[1..]);

        public static IEnumerable<string> OneByOne(PlankId? id)
        {
            yield return id.ToString()!.TrimEnd('a');
        }

        public static string Told(PlankId id, string words) => $"{id}: {words}";
    }
}
