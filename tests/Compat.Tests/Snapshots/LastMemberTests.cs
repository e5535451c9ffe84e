using System.Reflection;
using Compat.Snapshots;

namespace Compat.Tests.Snapshots;

/// <summary>What the reader of snapshots takes for the last member of an enumeration is the last one.</summary>
public class LastMemberTests
{
    public static TheoryData<string> Fields()
    {
        var fields = new TheoryData<string>();
        foreach (var field in typeof(LastMember).GetFields(BindingFlags.Public | BindingFlags.Static)) fields.Add(field.Name);
        return fields;
    }

    [Theory]
    [MemberData(nameof(Fields))]
    public void It_is_the_last_and_members_count_from_0_without_gaps(string name)
    {
        var field = typeof(LastMember).GetField(name)!;
        Assert.Equal(name, field.FieldType.Name);
        var members = Enum.GetValues(field.FieldType).Cast<object>().Select(Convert.ToInt32).ToArray();
        Assert.Equal(Enumerable.Range(0, members.Length), members);
        Assert.Equal(members[^1], Convert.ToInt32(field.GetRawConstantValue(), System.Globalization.CultureInfo.InvariantCulture));
    }
}
