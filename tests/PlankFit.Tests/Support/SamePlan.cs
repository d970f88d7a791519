using System.Collections;
using System.Reflection;

namespace PlankFit.Tests.Support;

/// <summary>
/// Whether two plans say the same to whoever reads them: every value in them, however deep, to the last bit. Surfaces, strips and whatever else is asked by functions are
/// left to what was worked out from them.
/// </summary>
internal sealed class SamePlan
{
    private readonly HashSet<(object, object)> seen = new(Pairs.Rule);
    private readonly Dictionary<Type, FieldInfo[]> fields = [];

    private SamePlan() { }

    /// <summary>The first thing in which they differ, by the way to it; null where there is none.</summary>
    public static string? Difference(object? one, object? other) => new SamePlan().Of(one, other);

    private string? Of(object? one, object? other)
    {
        if (ReferenceEquals(one, other))
        {
            return null;
        }

        if (one is null || other is null || one.GetType() != other.GetType())
        {
            return $": {one?.GetType().Name ?? "nothing"} and {other?.GetType().Name ?? "nothing"}";
        }

        Type type = one.GetType();
        if (one is IConvertible || (type.IsValueType && IsOfGeometry(type)))
        {
            return one.Equals(other) ? null : $": {one} and {other}";
        }

        if (one is Delegate || IsAsked(type) || (!type.IsValueType && !seen.Add((one, other))))
        {
            return null;
        }

        return (one, other) switch
        {
            (IDictionary a, IDictionary b) => Tables(a, b),
            (IStructuralEquatable, _) when type.GetProperty("IsDefault") is { } none =>
                none.GetValue(one) is true
                    ? (none.GetValue(other) is true ? null : ": not given in the one")
                    : Lists((IList)one, (IList)other),
            (IList a, IList b) => Lists(a, b),
            _ => FieldsOf(type)
                .Select(f =>
                    Of(f.GetValue(one), f.GetValue(other)) is { } off
                        ? $".{Plain(f.Name)}{off}"
                        : null
                )
                .FirstOrDefault(d => d is not null),
        };
    }

    private string? Tables(IDictionary a, IDictionary b) =>
        a.Count != b.Count
            ? $": {a.Count} and {b.Count} entries"
            : a
                .Keys.Cast<object>()
                .Select(k => Of(a[k], b[k]) is { } off ? $"[{k}]{off}" : null)
                .FirstOrDefault(d => d is not null);

    private string? Lists(IList a, IList b)
    {
        if (a.Count != b.Count)
        {
            return $": {a.Count} and {b.Count} of them";
        }

        for (int i = 0; i < a.Count; i++)
        {
            if (Of(a[i], b[i]) is { } off)
            {
                return $"[{i}]{off}";
            }
        }

        return null;
    }

    private FieldInfo[] FieldsOf(Type? type)
    {
        if (type is null)
        {
            return [];
        }

        if (!fields.TryGetValue(type, out FieldInfo[]? own))
        {
            const BindingFlags Own =
                BindingFlags.Instance
                | BindingFlags.Public
                | BindingFlags.NonPublic
                | BindingFlags.DeclaredOnly;
            fields[type] = own = [.. type.GetFields(Own), .. FieldsOf(type.BaseType)];
        }

        return own;
    }

    /// <summary>Of the field behind a property, the property's name.</summary>
    private static string Plain(string field) =>
        field.Split('<', '>') is [_, var name, _] ? name : field;

    private static bool IsOfGeometry(Type type) =>
        type.Namespace?.StartsWith("PlankFit.Geometry", StringComparison.Ordinal) == true;

    /// <summary>What is asked by functions, and what is kept for planning again.</summary>
    private static bool IsAsked(Type type) =>
        IsOfGeometry(type)
        || type.Name is "PlankMap" or "LayWorkings" or "BuiltKeel" or "MadePart" or "LayerFastened";

    private sealed class Pairs : IEqualityComparer<(object, object)>
    {
        public static readonly Pairs Rule = new();

        public bool Equals((object, object) x, (object, object) y) =>
            ReferenceEquals(x.Item1, y.Item1) && ReferenceEquals(x.Item2, y.Item2);

        public int GetHashCode((object, object) pair) =>
            System.Runtime.CompilerServices.RuntimeHelpers.GetHashCode(pair.Item1);
    }
}
