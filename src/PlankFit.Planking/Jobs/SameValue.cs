using System.Collections;
using System.Reflection;

namespace PlankFit.Planking.Jobs;

/// <summary>
/// Whether two values say the same, however deep. A record compares its lists by reference, so that a job that is read twice is not equal to itself; here lists are
/// the same where they hold the same in the same order, and tables where they hold the same by the same keys. Every field counts, so that none can be forgotten.
/// </summary>
public static class SameValue
{
    public static bool Are(object? one, object? other) => Deep.Rule.Equals(one, other);

    private sealed class Deep : IEqualityComparer
    {
        public static readonly Deep Rule = new();

        public new bool Equals(object? one, object? other)
        {
            if (ReferenceEquals(one, other))
            {
                return true;
            }

            if (one is null || other is null || one.GetType() != other.GetType())
            {
                return false;
            }

            return one switch
            {
                string or IConvertible => one.Equals(other),
                // Arrays, immutable ones and tuples: part by part, by this same rule.
                IStructuralEquatable parts => parts.Equals(other, this),
                IDictionary table => Tables(table, (IDictionary)other),
                _ => Fields(one.GetType()).All(f => Equals(f.GetValue(one), f.GetValue(other))),
            };
        }

        /// <summary>Nothing is ever looked up by it.</summary>
        public int GetHashCode(object value) => 0;

        private bool Tables(IDictionary one, IDictionary other) =>
            one.Count == other.Count
            && one.Keys.Cast<object>().All(k => other.Contains(k) && Equals(one[k], other[k]));

        private static IEnumerable<FieldInfo> Fields(Type type) =>
            type.BaseType is { } below && below != typeof(object) && below != typeof(ValueType)
                ? Own(type).Concat(Fields(below))
                : Own(type);

        private static FieldInfo[] Own(Type type) =>
            type.GetFields(
                BindingFlags.Instance
                    | BindingFlags.Public
                    | BindingFlags.NonPublic
                    | BindingFlags.DeclaredOnly
            );
    }
}
