using System.Text.RegularExpressions;
using Mono.Cecil;
using Mono.Cecil.Cil;

namespace PlankFit.Tests.Architecture;

/// <summary>
/// Which file of a project needs which other: every mention of a type in the compiled code, and for each type the file that declares it. A constant leaves no trace
/// in compiled code, and so no arrow.
/// </summary>
internal sealed partial class Arrows
{
    private readonly Dictionary<string, string> fileOf = [];
    private readonly HashSet<(string From, string To)> seen = [];

    private Arrows() { }

    /// <summary>Pairs of files, paths within the project, and the type for whose sake the first needs the second.</summary>
    public Dictionary<(string From, string To), string> Why { get; } = [];

    public static Arrows Of(string project, string assembly)
    {
        var arrows = new Arrows();
        arrows.Files(project, "");
        arrows.Read(assembly);
        return arrows;
    }

    /// <summary>Of several projects together: paths begin with the name of the project's folder.</summary>
    public static Arrows Across(IEnumerable<(string Project, string Assembly)> projects)
    {
        var arrows = new Arrows();
        (string Project, string Assembly)[] all = [.. projects];
        foreach ((string project, _) in all)
        {
            arrows.Files(project, Path.GetFileName(project) + "/");
        }

        foreach ((_, string assembly) in all)
        {
            arrows.Read(assembly);
        }

        return arrows;
    }

    private void Files(string project, string before)
    {
        foreach (
            string file in Directory.EnumerateFiles(project, "*.cs", SearchOption.AllDirectories)
        )
        {
            string path = Path.GetRelativePath(project, file).Replace('\\', '/');
            if (
                path.StartsWith("obj/", StringComparison.Ordinal)
                || path.StartsWith("bin/", StringComparison.Ordinal)
            )
            {
                continue;
            }

            string text = File.ReadAllText(file);
            string space = Namespace().Match(text).Groups[1].Value;
            foreach (Match declared in Declared().Matches(text))
            {
                // Nested types are their outermost one's; a generic type's name goes without its parameters here.
                fileOf.TryAdd($"{space}.{declared.Groups[1].Value}", before + path);
            }
        }
    }

    private void Read(string assembly)
    {
        using var read = AssemblyDefinition.ReadAssembly(assembly);
        foreach (TypeDefinition type in read.MainModule.Types)
        {
            From(type);
        }
    }

    private void From(TypeDefinition type)
    {
        if (FileOf(type) is not { } file)
        {
            return;
        }

        foreach (TypeDefinition one in WithNested(type))
        {
            Mention(file, one.BaseType);
            one.Interfaces.ToList().ForEach(i => Mention(file, i.InterfaceType));
            one.Fields.ToList().ForEach(f => Mention(file, f.FieldType));
            foreach (MethodDefinition method in one.Methods)
            {
                Mention(file, method.ReturnType);
                method.Parameters.ToList().ForEach(p => Mention(file, p.ParameterType));
                if (!method.HasBody)
                {
                    continue;
                }

                method.Body.Variables.ToList().ForEach(v => Mention(file, v.VariableType));
                foreach (Instruction step in method.Body.Instructions)
                {
                    switch (step.Operand)
                    {
                        case TypeReference t:
                            Mention(file, t);
                            break;
                        case MethodReference m:
                            Mention(file, m.DeclaringType);
                            Mention(file, m.ReturnType);
                            (m as GenericInstanceMethod)
                                ?.GenericArguments.ToList()
                                .ForEach(a => Mention(file, a));
                            break;
                        case FieldReference f:
                            Mention(file, f.DeclaringType);
                            break;
                    }
                }
            }
        }
    }

    private void Mention(string from, TypeReference? type)
    {
        switch (type)
        {
            case null or GenericParameter:
                return;
            case GenericInstanceType generic:
                Mention(from, generic.ElementType);
                generic.GenericArguments.ToList().ForEach(a => Mention(from, a));
                return;
            case TypeSpecification of:
                Mention(from, of.ElementType);
                return;
        }

        if (FileOf(type) is { } to && to != from && seen.Add((from, to)))
        {
            Why[(from, to)] = type.Name;
        }
    }

    private string? FileOf(TypeReference type)
    {
        while (type.DeclaringType is { } outer)
        {
            type = outer;
        }

        return fileOf.GetValueOrDefault($"{type.Namespace}.{type.Name.Split('`')[0]}");
    }

    private static IEnumerable<TypeDefinition> WithNested(TypeDefinition type) =>
        type.NestedTypes.SelectMany(WithNested).Prepend(type);

    [GeneratedRegex(@"^namespace ([\w.]+);", RegexOptions.Multiline)]
    private static partial Regex Namespace();

    [GeneratedRegex(
        @"^(?:public |internal |static |sealed |abstract |partial |readonly )*(?:class|record struct|record|struct|enum|interface|delegate \w+) (\w+)",
        RegexOptions.Multiline
    )]
    private static partial Regex Declared();
}
